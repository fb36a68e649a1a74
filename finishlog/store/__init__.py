"""The SQLite database: tables, one transaction a command, upgrades and backups."""
