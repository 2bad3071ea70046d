"""What stands where on a page, in the order in which it is read."""
