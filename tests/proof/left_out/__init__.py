"""Words left out of finished pages one after the other, as a page maker would leave them out: neither printed nor claimed by the page."""
