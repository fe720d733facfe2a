"""From links and a seat to joints in the car."""
