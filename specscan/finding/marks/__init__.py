"""What marks, codes and brackets say: whose a statement is, and whether it is standard."""
