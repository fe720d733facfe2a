"""The commands of the command line: each module adds its own arguments, and parses, calls and prints."""
