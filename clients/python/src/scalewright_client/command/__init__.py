"""The command ``scalewright-client``: whole files of boards through the service."""
