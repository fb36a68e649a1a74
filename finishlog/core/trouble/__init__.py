"""Why a film went wrong, and when to take it off."""
