"""The examples of the OpenAPI document are what the service does."""

import asyncio

import pytest

from scalewright.api import examples
from tests.api.replay import answer_file, as_filed, ask, cases, same


@pytest.mark.parametrize(("word", "name"), cases())
def test_an_example_is_answered_as_it_shows(word, name):
    """The question of an example gets the answer of the example, byte for byte but for last digits of numbers."""
    answer = asyncio.run(ask(word, name))
    shown = answer_file(word, name).read_text(encoding="utf-8")

    assert answer.status_code == 200, answer.text
    assert same(as_filed(answer.content), shown)


def test_another_answer_would_be_noticed():
    """The comparison lets pass neither another name, nor another number, nor one more or less."""
    shown = '{"fret": 1, "from_nut": 36.48169675689922}'

    assert same(shown, '{"fret": 1, "from_nut": 36.48169675689923}')
    assert not same(shown, '{"fret": 1, "from_nut": 36.481696}')
    assert not same(shown, '{"fret": 1, "from_the_nut": 36.48169675689922}')
    assert not same(shown, '{"fret": 1, "from_nut": null}')


def test_the_service_works_without_its_examples(monkeypatch):
    """Where the folder is absent the document only lacks its examples."""
    assert examples.examples_of("layout")
    monkeypatch.setattr(examples, "folder", lambda: None)

    assert examples.examples_of("layout") == []
