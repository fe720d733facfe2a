"""The document shown and edited."""
