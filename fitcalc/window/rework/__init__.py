"""What is changed from the car as found, live."""
