"""The least that a question costs: the same two libraries, the database opened, one query."""

import os

import typer
from sqlalchemy import URL, create_engine, func, select, table

engine = create_engine(URL.create("sqlite", database=os.environ["FINISHLOG_DB"]))
with engine.connect() as connection:
    typer.echo(connection.scalar(select(func.count()).select_from(table("act"))))
