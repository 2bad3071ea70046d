"""Letters and strokes of a PDF, and the words and lines that they make."""
