"""Which vans there are, what they are called and who makes them."""
