#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Installs the package into a Debian 12 that has nothing else, runs the program there, and removes
# both again, after which no file may be left:
#
#   sudo tests/install/clean_root.sh BUILD
#
# BUILD is a complete build. It needs root, debootstrap and a mirror of Debian, takes a few minutes,
# and is a drill of its own; where it cannot be done it says why and exits with 77. The ordinary
# tests install the same package into a folder.
set -euo pipefail
export LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive

cannot() { printf 'not possible here: %s\n' "$*" >&2; exit 77; }
step() { printf '\n== %s\n' "$*"; }
fail() { printf 'FAILED: %s\n' "$*" >&2; exit 1; }

[[ $# -eq 1 && -f $1/CPackConfig.cmake ]] || fail "usage: clean_root.sh BUILD, a configured build"
build=$(realpath "$1")
[[ $(id -u) -eq 0 ]] || cannot "it needs root"
command -v debootstrap >/dev/null || cannot "it needs the package debootstrap"
scratch=$(mktemp -d)
trap 'rm -rf --one-file-system "$scratch"' EXIT
mirror=$(apt-get indextargets --format '$(REPO_URI)' 'Created-By: Packages' 'Codename: bookworm' \
  'Component: main' | head -n 1)
mirror=${mirror:-http://deb.debian.org/debian}
/usr/lib/apt/apt-helper download-file "${mirror%/}/dists/bookworm/Release" "$scratch/Release" \
  >/dev/null || cannot "no mirror at $mirror"

step "the package"
cpack --config "$build/CPackConfig.cmake" -G DEB -B "$scratch/package"
package=$(echo "$scratch"/package/lodebook_*.deb)
dpkg-deb --info "$package"

step "a clean root from $mirror"
root=$scratch/root
debootstrap --variant=minbase bookworm "$root" "$mirror" >"$scratch/debootstrap.log" ||
  { tail "$scratch/debootstrap.log"; fail "debootstrap"; }
chroot "$root" apt-get -qq update
# All but what apt and dpkg keep for themselves.
files() {
  find "$root" -xdev \( -path "$root/var/lib/apt" -o -path "$root/var/lib/dpkg" -o \
    -path "$root/var/cache" -o -path "$root/var/log" -o -path "$root/tmp" -o \
    -path "$root/proc" -o -path "$root/sys" -o -path "$root/dev" \) -prune -o -print | sort
}
files >"$scratch/before"

step "apt-get install"
cp "$package" "$root/tmp/"
chroot "$root" apt-get -o Dpkg::Use-Pty=0 install -y --no-install-recommends "/tmp/$(basename "$package")"

step "the program"
chroot "$root" lodebook --version
log=/usr/share/doc/lodebook/data/night-typing.log
status=0
chroot "$root" lodebook reduce "$log" -o /tmp/night.csv || status=$?
[[ $status -eq 1 ]] || fail "status $status for a log with errors"
"$build/src/cli/lodebook" reduce --quiet "$root$log" -o "$scratch/night.csv" || true
cmp "$root/tmp/night.csv" "$scratch/night.csv"
[[ $(wc -l <"$scratch/night.csv") -eq 97 ]] || fail "96 readings and a header were expected"
chroot "$root" gzip -t /usr/share/man/man1/lodebook.1.gz /usr/share/man/man5/lodebook-log.5.gz
chroot "$root" bash -n /usr/share/bash-completion/completions/lodebook

step "apt-get remove --purge"
chroot "$root" apt-get -o Dpkg::Use-Pty=0 remove --purge -y lodebook
left=$(chroot "$root" find / -xdev -iname '*lodebook*' -not -path '/tmp/*' -not -path '/proc/*')
[[ -z $left ]] || fail "left behind: $left"
chroot "$root" apt-get -o Dpkg::Use-Pty=0 autoremove --purge -y
files >"$scratch/after"
diff "$scratch/before" "$scratch/after" || fail "files are left, or missing"
[[ $(chroot "$root" dpkg-query -W -f '${Status}' lodebook 2>/dev/null) != *installed* ]] ||
  fail "dpkg still knows it"

printf '\ninstalled, run and removed in a clean Debian 12; no file is left\n'
