"""What the limits say, worst first."""
