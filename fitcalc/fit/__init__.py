"""The one result, and the search for the least rework."""
