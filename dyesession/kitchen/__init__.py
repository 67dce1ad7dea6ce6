"""The kitchen: scales, pots, stove, water, jars and household, and friendly loading of `kitchen.toml`."""
