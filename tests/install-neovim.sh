#!/usr/bin/env bash
# Neovim from Debian's packages, for the tests that use the language server from an editor that is not VS Code.
set -euo pipefail

if command -v nvim >/dev/null; then
    echo "Neovim is there: $(nvim --version | sed -n 1p)"
    exit 0
fi
if ! command -v apt-get >/dev/null; then
    echo "The tests need Neovim, and this machine has no apt-get to install it with." >&2
    exit 1
fi
as_root=()
[ "$(id -u)" -eq 0 ] || as_root=(sudo)
export DEBIAN_FRONTEND=noninteractive
"${as_root[@]}" apt-get update -q
"${as_root[@]}" apt-get install -y -q --no-install-recommends neovim
