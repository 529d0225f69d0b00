"""Routes: one file for each word of the contract."""
