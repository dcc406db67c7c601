"""The scan pages on the network: what is kept beside the job (`store`), the links on its labels
(`links`), who may see and mark (`access`), photos drawn anew (`photos`)."""
