# The service as an image: two stages, hash-locked packages, no root, no shell in the way of signals.
ARG BASE_IMAGE=python:3.12-slim

FROM ${BASE_IMAGE} AS builder
ENV PIP_DISABLE_PIP_VERSION_CHECK=1 PIP_NO_CACHE_DIR=1
COPY service/requirements.lock /build/requirements.lock
RUN python -m venv --without-pip /opt/scalewright \
 && pip --python /opt/scalewright/bin/python install --no-compile --require-hashes --no-deps -r /build/requirements.lock \
 && find /opt/scalewright/lib -depth -type d -name tests -exec rm -r {} +
COPY openapi_examples /opt/scalewright/checkout/openapi_examples
COPY service/scalewright /opt/scalewright/checkout/service/scalewright
# Packages import in a third of the time when they are compiled; the image is read-only, so now or never.
RUN /opt/scalewright/bin/python -c "import pathlib, sysconfig; pathlib.Path(sysconfig.get_path('purelib'), 'scalewright.pth').write_text('/opt/scalewright/checkout/service\n')" \
 && /opt/scalewright/bin/python -m compileall -q --invalidation-mode unchecked-hash /opt/scalewright

FROM ${BASE_IMAGE}
ENV PATH=/opt/scalewright/bin:$PATH PYTHONUNBUFFERED=1 PYTHONDONTWRITEBYTECODE=1
RUN groupadd --gid 10001 scalewright \
 && useradd --uid 10001 --gid scalewright --no-create-home --home-dir /nonexistent --shell /usr/sbin/nologin scalewright
COPY --from=builder /opt/scalewright /opt/scalewright
# The modules of the standard library that the service loads, for base images that come without .pyc files.
RUN PYTHONDONTWRITEBYTECODE='' python -c "import uvicorn.loops.auto, scalewright.api.app, scalewright.api.connections, scalewright.api.draining"
LABEL org.opencontainers.image.title="scalewright" \
      org.opencontainers.image.description="What scale a fretted board really has, and what follows from it." \
      org.opencontainers.image.documentation="/docs"
USER 10001:10001
WORKDIR /
EXPOSE 8000
HEALTHCHECK --interval=10s --timeout=3s --start-period=10s --retries=3 \
  CMD ["python", "-c", "import urllib.request as u; u.urlopen('http://127.0.0.1:8000/livez', timeout=2)"]
STOPSIGNAL SIGTERM
ENTRYPOINT ["python", "-m", "scalewright"]
CMD ["serve", "--host", "0.0.0.0", "--port", "8000"]
