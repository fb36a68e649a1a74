"""Dated work: what to do on which visit to the shop, and whether due dates hold."""
