"""The wire: what requests may say and what answers look like, as pydantic models."""
