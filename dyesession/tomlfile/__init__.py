"""TOML in and out: reading with limits and line numbers, a typed view for loaders, and two writers.

Must not know what any table means. The language: TOML 1.0.0 and its change log, github.com/toml-lang/toml.
"""

from dyesession.tomlfile.flat import Unwritable, block_text, normal, parsed_back, read_block, render_block
from dyesession.tomlfile.limits import HAND_WRITTEN, LOG, Limits
from dyesession.tomlfile.problems import TomlFileError
from dyesession.tomlfile.reading import Document, parse_toml, read_toml
from dyesession.tomlfile.table import Table
from dyesession.tomlfile.writing import write_document

__all__ = [
    "HAND_WRITTEN",
    "LOG",
    "Document",
    "Limits",
    "Table",
    "TomlFileError",
    "Unwritable",
    "block_text",
    "normal",
    "parse_toml",
    "parsed_back",
    "read_block",
    "read_toml",
    "render_block",
    "write_document",
]
