"""Letters of a page that is a picture."""
