"""Where plans and checks meet: plan, check, hold, finish."""
