#!/usr/bin/env bash
# Chromium from Debian's packages, for the tests that look at the brief as a browser shows it.
set -euo pipefail

if [ -x /usr/bin/chromium ]; then
    echo "Chromium is there: $(/usr/bin/chromium --version 2>/dev/null || echo /usr/bin/chromium)"
    exit 0
fi
if ! command -v apt-get >/dev/null; then
    echo "The tests need Chromium at /usr/bin/chromium, and this machine has no apt-get to install it with." >&2
    exit 1
fi
as_root=()
[ "$(id -u)" -eq 0 ] || as_root=(sudo)
export DEBIAN_FRONTEND=noninteractive
"${as_root[@]}" apt-get update -q
"${as_root[@]}" apt-get install -y -q --no-install-recommends chromium fonts-dejavu-core
