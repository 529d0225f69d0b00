"""What is deployed fits together: manifests by Kubernetes' own schemas, and their numbers with the service's."""

import re
from pathlib import Path

import kubernetes_validate
import pytest
import yaml

from scalewright.api.app import create_app
from scalewright.api.settings import PREFIX, Settings
from service import _bootstrap

ROOT = Path(__file__).resolve().parent.parent
MANIFESTS = sorted((ROOT / "service" / "deploy" / "kubernetes").glob("[!k]*.yaml"))
OLDEST, NEWEST = "1.32", "1.34"
"""Versions of Kubernetes whose schemas the manifests are held against."""

DOCKERFILE = (ROOT / "Dockerfile").read_text(encoding="utf-8")


def manifest(name):
    """Return what a manifest says."""
    return yaml.safe_load((ROOT / "service" / "deploy" / "kubernetes" / f"{name}.yaml").read_text(encoding="utf-8"))


@pytest.fixture(scope="module")
def pod():
    """Return the description of the pods."""
    return manifest("deployment")["spec"]["template"]["spec"]


@pytest.mark.source(
    "Kubernetes' OpenAPI schemas of each version, in strict form, as the package kubernetes-validate has them"
)
@pytest.mark.parametrize("version", [OLDEST, NEWEST])
@pytest.mark.parametrize("path", MANIFESTS, ids=lambda path: path.stem)
def test_a_manifest_is_valid(path, version):
    """Neither a wrong type nor an unknown name is in it."""
    kubernetes_validate.validate(yaml.safe_load(path.read_text(encoding="utf-8")), version, strict=True)


def test_a_slip_in_a_manifest_would_be_found():
    """A name that the schema does not know is refused."""
    spoiled = manifest("autoscaler")
    spoiled["spec"]["minReplica"] = spoiled["spec"].pop("minReplicas")

    with pytest.raises(kubernetes_validate.ValidationError):
        kubernetes_validate.validate(spoiled, OLDEST, strict=True)


def test_the_kustomization_names_every_manifest():
    """Applying the folder applies all of it."""
    listed = manifest("kustomization")["resources"]

    assert sorted(listed) == [path.name for path in MANIFESTS]


def test_there_is_time_to_go(pod):
    """The grace period holds lame duck and drain, the lame duck three readiness probes, and the names are settings."""
    (container,) = pod["containers"]
    given = {variable["name"]: float(variable["value"]) for variable in container["env"]}
    lame_duck, drain = given[f"{PREFIX}LAME_DUCK_SECONDS"], given[f"{PREFIX}DRAIN_SECONDS"]
    probe = container["readinessProbe"]
    text = {variable["name"]: variable["value"] for variable in container["env"]}

    assert pod["terminationGracePeriodSeconds"] > lame_duck + drain
    assert lame_duck >= 3 * probe["periodSeconds"] * probe["failureThreshold"]
    assert Settings.from_environment(text).lame_duck_seconds == lame_duck


def test_the_engine_sets_nothing_of_our_prefix(pod):
    """Variables that Kubernetes makes of a service's name would be taken for settings, and end the start."""
    assert manifest("service")["metadata"]["name"] == PREFIX.strip("_").lower()
    assert pod["enableServiceLinks"] is False


def test_the_probes_ask_addresses_that_exist(pod):
    """Health checks of the manifests and of the image are routes of the service, on the port of the image."""
    (container,) = pod["containers"]
    paths = create_app(Settings()).openapi()["paths"]
    asked = {container[probe]["httpGet"]["path"] for probe in ("startupProbe", "readinessProbe", "livenessProbe")}
    asked |= set(re.findall(r"http://127\.0\.0\.1:8000(/\w+)", DOCKERFILE))

    assert asked == {"/livez", "/readyz"}
    assert asked <= set(paths)
    assert f"EXPOSE {container['ports'][0]['containerPort']}\n" in DOCKERFILE


def test_nothing_is_allowed_that_is_not_needed(pod):
    """No root, no writing, no capability, no token, no way out; and the user is the image's."""
    (container,) = pod["containers"]
    rights = container["securityContext"]

    assert pod["securityContext"]["runAsNonRoot"] is True
    assert f"USER {pod['securityContext']['runAsUser']}:{pod['securityContext']['runAsGroup']}\n" in DOCKERFILE
    assert rights["readOnlyRootFilesystem"] is True
    assert rights["allowPrivilegeEscalation"] is False
    assert rights["capabilities"]["drop"] == ["ALL"]
    assert pod["automountServiceAccountToken"] is False
    assert manifest("network")["spec"]["egress"] == []
    assert "memory" in container["resources"]["limits"]


def test_one_goes_only_when_another_is_there():
    """No update and no emptied node leaves the service without a pod."""
    assert manifest("deployment")["spec"]["strategy"]["rollingUpdate"]["maxUnavailable"] == 0
    assert manifest("disruption")["spec"]["minAvailable"] >= 1
    assert manifest("autoscaler")["spec"]["minReplicas"] >= 2


def test_the_image_runs_a_python_that_the_service_supports():
    """The base image is not older than the oldest Python."""
    (version,) = re.findall(r"^ARG BASE_IMAGE=python:([\d.]+)-slim$", DOCKERFILE, re.MULTILINE)

    assert tuple(map(int, version.split("."))) >= _bootstrap.OLDEST_PYTHON
