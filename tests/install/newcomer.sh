#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# What a newcomer does, on a Debian that has nothing yet: a drill to run before a release.
#
#   sudo tests/install/newcomer.sh [bookworm|trixie] [root|user|bare]
#
# In a root made by debootstrap it clones this repository and runs the two commands of the README as
# they are printed: as root in a home of mode 0700 (`root`), as a user with sudo (`user`), or as root
# where there is neither /sys nor a terminal (`bare`). Then it makes the package, installs it in a
# second such root, runs the README's examples there as an ordinary user, and removes it again, after
# which no file may be left.
#
# It says what each command downloads, how long it takes and how much room it needs, and counts the
# tests that passed, failed and were skipped. It needs root, debootstrap, a mirror of Debian, 8 GB of
# room in $TMPDIR, and about an hour; where it cannot be done it says why and exits with 77.
set -euo pipefail
export LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive

cannot() { printf 'not possible here: %s\n' "$*" >&2; exit 77; }
step() { printf '\n== %s: %s\n' "$(date +%T)" "$*"; }
fail() { printf 'FAILED: %s\n' "$*" >&2; exit 1; }

release=${1:-bookworm} who=${2:-root}
[[ $release =~ ^(bookworm|trixie)$ && $who =~ ^(root|user|bare)$ && $# -le 2 ]] ||
  fail "usage: newcomer.sh [bookworm|trixie] [root|user|bare]"
[[ $(id -u) -eq 0 ]] || cannot "it needs root"
command -v debootstrap >/dev/null || cannot "it needs the package debootstrap"
source=$(git -C "$(dirname "$0")" rev-parse --show-toplevel)
scratch=$(mktemp -d)
mirror=${MIRROR:-http://deb.debian.org/debian}

leave() {
  for root in "$scratch"/*/; do
    for mounted in dev sys proc; do
      mountpoint -q "$root$mounted" && umount -R -l "$root$mounted"
    done
  done
  if grep -q " $scratch/" /proc/mounts; then
    echo "still mounted, and left: $scratch" >&2
  else
    rm -rf --one-file-system "$scratch"
  fi
}
trap leave EXIT

# new_root NAME: a bare root, with what a machine mounts.
new_root() {
  local root=$scratch/$1
  debootstrap --variant=minbase "$release" "$root" "$mirror" >"$scratch/debootstrap.log" ||
    { tail "$scratch/debootstrap.log"; cannot "debootstrap from $mirror"; }
  if [[ $release == bookworm ]]; then
    printf 'deb %s bookworm main\ndeb %s bookworm-updates main\n' "$mirror" "$mirror" \
      >"$root/etc/apt/sources.list"
  fi
  cp /etc/resolv.conf "$root/etc/"
  mount -t proc proc "$root/proc"
  if [[ $who != bare ]]; then
    for shared in sys dev; do
      mount --rbind "/$shared" "$root/$shared"
      mount --make-rslave "$root/$shared"
    done
  fi
  chmod 700 "$root/root"
}
inside() { env -i HOME="$home" PATH="$PATH" DEBIAN_FRONTEND=noninteractive LC_ALL=C.UTF-8 \
  chroot --userspec="$user" "$first" /bin/bash -c "cd $clone && $1"; }
# run_block N: the Nth block of shell in the README, as printed.
run_block() {
  local command begun=$SECONDS before
  command=$(awk -v n="$1" '/^```sh$/ { ++i; next } /^```$/ { if (i == n) exit } i == n' \
    "$first$clone/README.md")
  before=$(du -sm --one-file-system "$first" | cut -f1)
  inside "$command" >"$scratch/block$1.log" 2>&1 || { tail -n 60 "$scratch/block$1.log"; fail "command $1"; }
  printf 'command %s: %s; %d minutes %d seconds; %d MB more on the disk\n' "$1" \
    "$(grep -o '[0-9.,]* [kM]B of archives' "$scratch/block$1.log" | head -n 1 || true) downloaded" \
    $(((SECONDS - begun) / 60)) $(((SECONDS - begun) % 60)) \
    $(($(du -sm --one-file-system "$first" | cut -f1) - before))
}

step "a bare $release, $who"
first=$scratch/first user=root home=/root
new_root first
chroot "$first" apt-get -qq update
chroot "$first" apt-get -qq install -y --no-install-recommends git >/dev/null 2>&1
if [[ $who == user ]]; then
  chroot "$first" apt-get -qq install -y --no-install-recommends sudo >/dev/null 2>&1
  chroot "$first" useradd --create-home --shell /bin/bash newcomer
  echo 'newcomer ALL=(ALL) NOPASSWD: ALL' >"$first/etc/sudoers.d/newcomer"
  user=newcomer home=/home/newcomer
fi
clone=$home/lodebook
git clone -q "$source" "$first$clone"
[[ $who != user ]] || chroot "$first" chown -R newcomer: "$clone"

step "the README's two commands"
run_block 1
tail -n 2 "$scratch/block1.log"
run_block 2
grep -E '^[0-9]+% tests passed' "$scratch/block2.log"
printf 'skipped: %s\n' "$(grep -c '\*\*\*Skipped' "$scratch/block2.log" || true)"

step "the package in a second bare root"
chroot "$first" apt-get -qq install -y --no-install-recommends dpkg-dev file >/dev/null 2>&1
inside "cpack --config build/CPackConfig.cmake -B build/package" >/dev/null
package=$(echo "$first$clone"/build/package/lodebook_*.deb)
dpkg-deb --info "$package" | sed -n '/^ Package/,$p'
new_root second
second=$scratch/second
chroot "$second" apt-get -qq update
chroot "$second" apt-get -qq install -y --no-install-recommends python3 >/dev/null 2>&1
chroot "$second" useradd --create-home --shell /bin/bash visitor
# All but what apt and dpkg keep for themselves.
files() {
  find "$second" -xdev \( -path "$second/var/lib/apt" -o -path "$second/var/lib/dpkg" -o \
    -path "$second/var/cache" -o -path "$second/var/log" -o -path "$second/tmp" -o \
    -path "$second/proc" -o -path "$second/sys" -o -path "$second/dev" \) -prune -o -print | sort
}
files >"$scratch/before"
cp "$package" "$second/tmp/"
chroot "$second" apt-get -qq install -y --no-install-recommends "/tmp/$(basename "$package")" >/dev/null 2>&1
chroot "$second" lodebook --version | head -n 1

step "the README's examples, as an ordinary user"
mkdir "$second/tmp/guide"
cp "$source/README.md" "$source/tests/docs/run_examples.py" "$second/tmp/guide/"
cp -r "$source/docs" "$second/tmp/guide/"
chroot --userspec=visitor "$second" python3 -B /tmp/guide/run_examples.py /usr/bin/lodebook \
  /usr/share/doc/lodebook /tmp/guide/README.md

step "apt-get remove"
chroot "$second" gzip -t /usr/share/man/man1/lodebook.1.gz /usr/share/man/man5/lodebook-log.5.gz
chroot "$second" bash -n /usr/share/bash-completion/completions/lodebook
chroot "$second" apt-get -qq remove --purge -y lodebook >/dev/null 2>&1
chroot "$second" apt-get -qq autoremove --purge -y >/dev/null 2>&1
files >"$scratch/after"
diff "$scratch/before" "$scratch/after" || fail "files are left, or missing"

printf '\n%s, %s: both commands run, the package installed, tried and removed; no file is left\n' \
  "$release" "$who"
