"""The dataset as a data package: described, checked by digests, and read with the right types by other programs."""

import hashlib
import json
import re

import duckdb
import pandas as pd
import pytest

from specscan import api
from specscan.dataset.package import pandas_types
from specscan.dataset.schema import TABLES
from specscan.records.errors import DatasetError


@pytest.fixture(scope="module")
def package(demo_db, tmp_path_factory):
    """Give the folder of the package of the demo corpus, and its descriptor."""
    folder = tmp_path_factory.mktemp("package")
    api.export(demo_db, folder, "package", "CC-BY-4.0")
    return folder, json.loads((folder / "datapackage.json").read_text(encoding="utf-8"))


def resource(descriptor, name):
    return next(one for one in descriptor["resources"] if one["name"] == name)


def test_every_table_is_there_twice_with_size_and_digest(package):
    folder, descriptor = package
    assert {one["path"].removeprefix("data/").removesuffix(".csv") for one in descriptor["resources"]} >= {
        *TABLES, "vans", "vans_optioned", "vans_us", "vans_optioned_us",
    }  # fmt: skip
    for one in descriptor["resources"]:
        for file in (one, one["parquet"]):
            content = (folder / file["path"]).read_bytes()
            assert len(content) == file["bytes"]
            assert f"sha256:{hashlib.sha256(content).hexdigest()}" == file["hash"]


def test_the_descriptor_has_what_the_standard_asks_for_and_names_rules_licence_and_documents(package, demo_db):
    """Properties as in https://specs.frictionlessdata.io/data-package/ and /tabular-data-resource/."""
    _, descriptor = package
    assert re.fullmatch(r"[a-z0-9._-]+", descriptor["name"])
    assert re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", descriptor["created"])
    assert descriptor["licenses"][0]["name"] == "CC-BY-4.0"
    digests = api.query("SELECT rules_sha256 FROM runs ORDER BY finished_at", demo_db)["rules_sha256"]
    assert descriptor["specscan"]["rules_sha256"] == digests.iloc[-1]
    documents = api.query("SELECT sha256 FROM documents", demo_db)["sha256"]
    assert {one["sha256"] for one in descriptor["sources"]} == set(documents)
    names = [one["name"] for one in descriptor["resources"]]
    assert len(names) == len(set(names)) and all(re.fullmatch(r"[a-z0-9._-]+", name) for name in names)
    for one in descriptor["resources"]:
        assert one["profile"] == "tabular-data-resource"
        assert all(field["description"] for field in one["schema"]["fields"])


def test_the_data_dictionary_is_that_of_the_field_files(package, book):
    _, descriptor = package
    fields = {field["name"]: field for field in resource(descriptor, "vans")["schema"]["fields"]}
    for name, spec in book.fields.items():
        assert spec.meaning in fields[name]["description"]
        if spec.type == "choice":
            assert fields[name]["constraints"]["enum"] == book.choices_of(name)
    assert (fields["fresh_tank_l"]["type"], fields["fresh_tank_l"]["unit"]) == ("number", "l")
    assert (fields["heated_floor"]["type"], fields["sleeps"]["type"]) == ("boolean", "integer")
    us = {field["name"]: field for field in resource(descriptor, "vans-us")["schema"]["fields"]}
    assert us["fresh_tank_gal"]["description"] == "capacity of the fresh-water tank, in US units"


def test_every_cell_is_of_its_type_meets_its_constraints_and_keys_are_unique(package):
    """Table Schema (https://specs.frictionlessdata.io/table-schema/), as far as this package uses it."""
    folder, descriptor = package
    forms = {
        "number": r"-?\d+(\.\d+)?([eE][+-]?\d+)?", "integer": r"-?\d+", "boolean": "true|false", "array": r"\[.*\]",
        "datetime": r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ", "date": r"\d{4}-\d\d-\d\d",
    }  # fmt: skip
    for one in descriptor["resources"]:
        frame = pd.read_csv(folder / one["path"], dtype=str, keep_default_na=False)
        schema = one["schema"]
        assert list(frame.columns) == [field["name"] for field in schema["fields"]]
        for field in schema["fields"]:
            cells = {cell for cell in frame[field["name"]] if cell != ""}
            constraints = field.get("constraints", {})
            for cell in cells:
                assert re.fullmatch(forms.get(field["type"], r"(?s).*"), cell), (one["name"], field["name"], cell)
                assert cell in constraints.get("enum", [cell])
                assert re.fullmatch(constraints.get("pattern", r"(?s).*"), cell)
        if "primaryKey" in schema:
            assert not frame.duplicated(schema["primaryKey"]).any()


def test_pandas_reads_csv_and_parquet_with_the_same_types_and_values(package):
    folder, descriptor = package
    about = resource(descriptor, "vans")
    csv = pd.read_csv(folder / about["path"], dtype=pandas_types(about["schema"]))
    parquet = pd.read_parquet(folder / about["parquet"]["path"], dtype_backend="numpy_nullable")
    types = {name: str(kind) for name, kind in csv.dtypes.items()}
    assert (types["fresh_tank_l"], types["sleeps"], types["heated_floor"]) == ("Float64", "Int64", "boolean")
    assert {name: str(kind) for name, kind in parquet.dtypes.items()} == types
    pd.testing.assert_frame_equal(csv, parquet, check_exact=False, rtol=1e-9)
    assert csv["heated_floor"].isna().any() and (csv["heated_floor"] == False).any()  # noqa: E712  unknown is not no


def test_duckdb_reads_parquet_with_the_types_of_the_dataset(package, demo_db):
    folder, descriptor = package
    with duckdb.connect(str(demo_db), read_only=True) as there, duckdb.connect() as fresh:
        for one in descriptor["resources"]:
            name = one["path"].removeprefix("data/").removesuffix(".csv")
            path = folder / one["parquet"]["path"]
            wanted = there.execute(f"SELECT column_name, column_type FROM (DESCRIBE {name})").fetchall()
            got = fresh.execute(f"SELECT column_name, column_type FROM (DESCRIBE FROM '{path}')").fetchall()
            assert got == wanted
            count = there.execute(f"SELECT count(*) FROM {name}").fetchone()
            assert fresh.execute(f"SELECT count(*) FROM '{path}'").fetchone() == count


def test_the_same_dataset_gives_the_same_files(package, demo_db, tmp_path):
    folder, descriptor = package
    api.export(demo_db, tmp_path, "package", "CC-BY-4.0")
    assert json.loads((tmp_path / "datapackage.json").read_text(encoding="utf-8")) == descriptor


def test_a_folder_that_cannot_be_written_is_an_error(demo_db, tmp_path):
    (tmp_path / "file").write_text("")
    with pytest.raises(DatasetError, match="cannot be written"):
        api.export(demo_db, tmp_path / "file", "package")
