"""Tables, with and without rules, their heads and labels."""
