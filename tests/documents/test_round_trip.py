"""What is saved is what is loaded, whatever was in the file before."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from fitcalc.documents.samples import sample_cars
from fitcalc.documents.store import load, load_car, save
from tests.strategies import cars, drivers, setups

documents = st.shared(st.sampled_from([cars, drivers, setups]), key="kind").flatmap(lambda kind: kind())
slow = settings(suppress_health_check=list(HealthCheck))


@slow
@given(document=documents)
def test_new_file_holds_the_document(document, tmp_path_factory):
    path = tmp_path_factory.mktemp("new") / "document.toml"
    save(document, path)
    assert load(type(document), path) == document


@slow
@given(first=documents, second=documents)
def test_file_of_one_document_updated_to_another(first, second, tmp_path_factory):
    path = tmp_path_factory.mktemp("update") / "document.toml"
    save(first, path)
    save(second, path)
    assert load(type(second), path) == second


@slow
@given(document=cars(), sample=st.sampled_from(sorted(sample_cars().values())))
def test_hand_written_car_updated_to_any_other(document, sample, tmp_path_factory):
    path = tmp_path_factory.mktemp("sample") / "car.toml"
    path.write_bytes(sample.read_bytes())
    save(document, path)
    assert load_car(path) == document
