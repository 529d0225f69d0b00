"""Access: keys, quotas, pages of other origins, and documentation that can be switched off."""

import hashlib
import hmac
import json
import re

import pytest

from scalewright.__main__ import main
from scalewright.api.app import create_app
from scalewright.api.keys import Key, key_of, new_key
from scalewright.api.quota import Quota
from scalewright.api.settings import PREFIX, Settings, SettingsError

SECRETS = {"old": "shop-old-secret", "new": "shop-new-secret", "bench": "bench-secret"}
DIGESTS = {name: hashlib.sha256(secret.encode()).hexdigest() for name, secret in SECRETS.items()}
KEYS = f"shop:{DIGESTS['old']}, shop:{DIGESTS['new']}, bench:{DIGESTS['bench']}:layout+metrics"
QUESTION = {"scale": 650, "rule": "equal", "frets": 12}
PAGE = "https://shop.example"


@pytest.fixture(scope="module")
def locked():
    """Return an application that asks for keys."""
    return create_app(Settings.from_environment({"SCALEWRIGHT_API_KEYS": KEYS}))


def test_without_keys_everybody_may_ask(send):
    """A key that nobody asked for is no fault."""
    assert send("POST", "/v1/layout", json=QUESTION, headers={"X-API-Key": "any"}).status_code == 200


@pytest.mark.parametrize("secret", ["old", "new"])
@pytest.mark.parametrize("form", ["X-API-Key", "Authorization"])
def test_old_and_new_keys_of_a_caller_are_good_together(send, locked, secret, form, caplog):
    """While callers change over, both keys open; the log has the key's name and never the key."""
    value = SECRETS[secret] if form == "X-API-Key" else f"Bearer {SECRETS[secret]}"
    with caplog.at_level("INFO", "scalewright.requests"):
        answer = send("POST", "/v1/layout", app=locked, json=QUESTION, headers={form: value})

    assert answer.status_code == 200
    assert json.loads(caplog.messages[-1])["key"] == "shop"
    assert SECRETS[secret] not in caplog.text


@pytest.mark.parametrize(
    "headers", [{}, {"X-API-Key": "wrong"}, {"X-API-Key": ""}, {"Authorization": "Basic c2hvcA=="}]
)
def test_no_key_or_a_wrong_one_is_401(send, locked, headers):
    """The refusal is a problem document, and challenges (RFC 9110, section 11.6.1)."""
    answer = send("POST", "/v1/layout", app=locked, json=QUESTION, headers=headers)

    assert answer.status_code == 401
    assert answer.json()["type"] == "/problems/key-needed"
    assert answer.headers["www-authenticate"].startswith("Bearer ")
    assert "wrong" not in answer.text


def test_a_key_for_some_words_is_403_elsewhere(send, locked):
    """A key that is good for layouts is good for nothing else."""
    headers = {"X-API-Key": SECRETS["bench"]}

    assert send("POST", "/v1/layout", app=locked, json=QUESTION, headers=headers).status_code == 200
    assert send("GET", "/metrics", app=locked, headers=headers).status_code == 200
    refused = send("POST", "/v1/identification", app=locked, json={}, headers=headers)
    assert (refused.status_code, refused.json()["type"]) == (403, "/problems/key-not-good-here")


@pytest.mark.parametrize(
    "path", ["/", "/livez", "/readyz", "/docs", "/docs/start.js", "/openapi.json", "/docs-assets/swagger-ui.css",
             "/problems/key-needed"]
)  # fmt: skip
def test_health_and_documentation_need_no_key(send, locked, path):
    """Whoever watches the service, or reads how to ask, has no key yet."""
    assert send("GET", path, app=locked, headers={"Accept": "*/*"}).status_code == 200


@pytest.mark.parametrize(
    "path", ["/metrics", "/v1/rules", "/v1/layout", "/no/such/address", "/docs-assets/../v1/rules"]
)
def test_all_else_needs_a_key(send, locked, path):
    """What is not listed as open is closed, addresses that do not exist too."""
    assert send("GET", path, app=locked).status_code in {401, 404}
    if "assets" not in path:
        assert send("GET", path, app=locked).status_code == 401


def test_every_key_is_compared(monkeypatch):
    """The first key that fits does not end the search, so that its place cannot be measured."""
    compared: list[str] = []
    real = hmac.compare_digest

    def compare(one, other):
        compared.append(one)
        return real(one, other)

    monkeypatch.setattr("hmac.compare_digest", compare)
    keys = Settings.from_environment({"SCALEWRIGHT_API_KEYS": KEYS}).api_keys

    assert key_of(SECRETS["old"].encode(), keys) == keys[0]
    assert compared == [key.digest for key in keys]


def test_the_command_makes_a_key_that_opens(send, capsys):
    """What the command prints as key opens a service with what it prints as setting."""
    assert main(["key", "supplier"]) == 0
    secret, setting = re.findall(r"^  (\S+)$", capsys.readouterr().out, re.MULTILINE)
    name, _, value = setting.partition("=")
    app = create_app(Settings.from_environment({name: value}))

    assert secret not in setting
    assert send("GET", "/v1/rules", app=app, headers={"X-API-Key": secret}).status_code == 200
    assert new_key("supplier") != new_key("supplier")


@pytest.mark.parametrize(
    "text", ["shop", "shop:abc", f"sh op:{'0' * 64}", f"shop:{'0' * 64}:", f"shop:{'0' * 64}:LAYOUT"]
)
def test_a_key_that_is_none_is_told(text):
    """A slip in the setting ends the start with a sentence that does not repeat it."""
    with pytest.raises(SettingsError, match=r"SCALEWRIGHT_API_KEYS has to be keys as name:digest") as told:
        Settings.from_environment({f"{PREFIX}API_KEYS": text})

    assert text not in str(told.value)


def test_a_key_without_words_opens_everything():
    """Words narrow a key; none leave it whole."""
    assert Key("a", "0" * 64).opens("/v1/layout")
    assert Key("a", "0" * 64, frozenset({"layout"})).opens("/v1/layout/batch")
    assert not Key("a", "0" * 64, frozenset({"layout"})).opens("/v1/layouts")


def test_the_document_says_whether_a_key_is_needed(send, locked):
    """With keys each calculation lists the scheme, without them as a choice; health never does."""
    with_keys = send("GET", "/openapi.json", app=locked).json()
    without = send("GET", "/openapi.json").json()

    assert with_keys["components"]["securitySchemes"]["key"]["name"] == "X-API-Key"
    assert with_keys["paths"]["/v1/layout"]["post"]["security"] == [{"key": []}, {"bearer": []}]
    assert without["paths"]["/v1/layout"]["post"]["security"][0] == {}
    for document in (with_keys, without):
        assert document["paths"]["/livez"]["get"]["security"] == []
        assert {"401", "403", "429", "503"} <= set(document["paths"]["/v1/layout"]["post"]["responses"])


def test_a_quota_is_spent_and_refills():
    """Six a minute: six at once, then one every ten seconds, and the whole again after a minute."""
    now = 1000.0
    quota = Quota(6, clock=lambda: now)

    assert [quota.take("a").granted for _ in range(7)] == [True] * 6 + [False]
    assert quota.take("b").granted
    now += 5.0
    spent = quota.take("a")
    assert (spent.granted, spent.remaining, spent.next_in, spent.full_in) == (False, 0, 5, 55)
    now += 5.0
    assert quota.take("a").granted
    now += 600.0
    full = quota.take("a")
    assert (full.granted, full.remaining, full.full_in) == (True, 5, 10)


def test_buckets_are_bounded(monkeypatch):
    """Callers without end do not fill the memory: full buckets go first, then the oldest."""
    monkeypatch.setattr("scalewright.api.quota._MOST_CALLERS", 10)
    quota = Quota(60, clock=lambda: 0.0)
    for caller in range(100):
        quota.take(str(caller))

    assert len(quota._buckets) == 10
    assert "99" in quota._buckets


def test_over_the_quota_is_429(send):
    """The answers say what is left, and the refusal when to come again; each key has its own, health has none."""
    app = create_app(Settings.from_environment({"SCALEWRIGHT_API_KEYS": KEYS, "SCALEWRIGHT_REQUESTS_PER_MINUTE": "2"}))
    shop, bench = ({"X-API-Key": SECRETS[name]} for name in ("new", "bench"))
    first, second, third = (send("POST", "/v1/layout", app=app, json=QUESTION, headers=shop) for _ in range(3))

    assert first.headers["ratelimit-policy"] == '"caller";q=2;w=60'
    assert re.fullmatch(r'"caller";r=1;t=\d+', first.headers["ratelimit"])
    assert [answer.status_code for answer in (first, second, third)] == [200, 200, 429]
    assert third.json()["type"] == "/problems/quota-exceeded"
    assert third.json()["violated-policies"] == ["caller"]
    assert 1 <= int(third.headers["retry-after"]) <= 30
    assert send("POST", "/v1/layout", app=app, json=QUESTION, headers=bench).status_code == 200
    assert all(send("GET", "/livez", app=app).status_code == 200 for _ in range(5))


def test_without_keys_the_quota_is_the_peers(send):
    """An open service counts by the address that the connection comes from."""
    app = create_app(Settings(log_requests=False, requests_per_minute=1))

    assert [send("GET", "/v1/rules", app=app).status_code for _ in range(2)] == [200, 429]


@pytest.mark.source("Fetch Standard, WHATWG, section 3.3: a preflight's answer names the origin, methods and headers")
def test_a_page_of_a_listed_origin_may_ask(send):
    """The preflight needs no key and names what may be sent; the answer names what may be read."""
    app = create_app(Settings.from_environment({"SCALEWRIGHT_CORS_ORIGINS": PAGE, "SCALEWRIGHT_API_KEYS": KEYS}))
    asks = {"Origin": PAGE, "Access-Control-Request-Method": "POST", "Access-Control-Request-Headers": "x-api-key"}
    allowed = send("OPTIONS", "/v1/layout", app=app, headers=asks)
    answer = send("POST", "/v1/layout", app=app, json=QUESTION, headers={"Origin": PAGE, "X-API-Key": SECRETS["new"]})
    refused = send("POST", "/v1/layout", app=app, json=QUESTION, headers={"Origin": PAGE})

    assert (allowed.status_code, allowed.headers["access-control-allow-origin"]) == (200, PAGE)
    assert "X-API-Key" in allowed.headers["access-control-allow-headers"]
    for answered in (answer, refused):
        assert answered.headers["access-control-allow-origin"] == PAGE
        assert "RateLimit" in answered.headers["access-control-expose-headers"]
        assert "Origin" in answered.headers["vary"]
    assert (answer.status_code, refused.status_code) == (200, 401)


@pytest.mark.parametrize("origin", ["https://elsewhere.example", "null", "https://shop.example.elsewhere.example"])
def test_a_page_of_another_origin_may_not(send, origin):
    """No header lets the browser hand the answer to a page that is not listed."""
    app = create_app(Settings(log_requests=False, cors_origins=(PAGE,)))
    asks = {"Origin": origin, "Access-Control-Request-Method": "POST"}

    assert "access-control-allow-origin" not in send("OPTIONS", "/v1/layout", app=app, headers=asks).headers
    assert "access-control-allow-origin" not in send("GET", "/v1/rules", app=app, headers={"Origin": origin}).headers


@pytest.mark.parametrize(
    "text", ["*", "shop.example", "https://shop.example/", "https://Shop.example", "ftp://a.example"]
)
def test_an_origin_that_is_none_is_told(text):
    """Neither every page nor a slip is accepted as an origin."""
    with pytest.raises(SettingsError, match="origins such as"):
        Settings.from_environment({f"{PREFIX}CORS_ORIGINS": text})


def test_without_the_setting_no_page_may_ask(send):
    """By default no answer speaks of origins."""
    assert "access-control-allow-origin" not in send("GET", "/v1/rules", headers={"Origin": PAGE}).headers


def test_documentation_can_be_switched_off(send):
    """Page, assets and document are gone; the calculations stay."""
    app = create_app(Settings(log_requests=False, docs=False))

    for path in ("/docs", "/docs/start.js", "/docs-assets/swagger-ui.css", "/openapi.json"):
        assert send("GET", path, app=app).status_code == 404
    assert send("GET", "/v1/rules", app=app).status_code == 200


@pytest.mark.parametrize("accept", ["application/json", "text/html", "*/*"])
def test_the_root_leads_to_no_documentation_that_is_switched_off(send, accept):
    """Where there are no documents, the root links and redirects to none of them, and still lists what there is."""
    answer = send("GET", "/", app=create_app(Settings(log_requests=False, docs=False)), headers={"Accept": accept})

    assert answer.status_code == 200
    assert "link" not in answer.headers
    assert "docs" not in answer.text
    assert "openapi" not in answer.text
    assert answer.json()["links"]["layout"] == "/v1/layout"


def test_every_answer_carries_the_security_headers(send):
    """Answers and refusals tell browsers not to guess, frame, refer or run; and none names the server."""
    for answer in (send("GET", "/v1/rules"), send("GET", "/nowhere"), send("POST", "/v1/layout", json={})):
        assert answer.headers["x-content-type-options"] == "nosniff"
        assert answer.headers["x-frame-options"] == "DENY"
        assert answer.headers["referrer-policy"] == "no-referrer"
        assert answer.headers["content-security-policy"].startswith("default-src 'none'")
        assert "server" not in answer.headers
