"""The job file as it is first written: a draft as TOML, with a word beside each key."""
