"""What the user measured: car, driver and rework as models with bounds, and their files."""
