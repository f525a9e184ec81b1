"""What people see: number formats, sentences, figures, tables for the terminal, the page.

Views show and never compute: every number comes from a result.
"""
