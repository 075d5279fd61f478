#!/bin/sh
# The Debian packages: what they depend on, what lintian says of them, and that they install and run where nothing else
# is. The clean root is made by mmdebstrap as root; without it or the network the package is unpacked instead and its
# libraries are looked for, and the last line says so.
# usage: package.sh SOURCE BUILD WORK
# shellcheck disable=SC2086 # $plan is several words
set -eu
source=$1 build=$2 work=$3
rm -rf "$work"
mkdir -p "$work"
(cd "$build" && cpack -G DEB -B "$work/made" >"$work/cpack.log" 2>&1) || { cat "$work/cpack.log"; exit 1; }
program=$(echo "$work"/made/arrisline_*.deb)
library=$(echo "$work"/made/libarrisline-dev_*.deb)

for package in "$program" "$library"; do
  lintian --allow-root --fail-on error,warning "$package"
done
# Found by dpkg-shlibdeps, not written by hand.
needs=$(dpkg-deb -f "$program" Depends)
for one in libc6 libcairo2 libexpat1 coinor-libcbc3 libpolyclipping22 libtbb12; do
  case $needs in *"$one"*) ;; *) echo "the package does not depend on $one: $needs"; exit 1 ;; esac
done
if dpkg-deb -c "$program" | grep -E '/(include|cmake)/|\.a$'; then
  echo "the program's package has what is for development"
  exit 1
fi

plan='plan bookcase-top.profile --kit pair-of-sixes.kit'
(cd "$source/examples" && "$build/arrisline" $plan) >"$work/expected"

if [ "$(id -u)" -eq 0 ] && command -v mmdebstrap >/dev/null &&
  mmdebstrap --quiet --variant=apt bookworm "$work/there" >"$work/there.log" 2>&1; then
  where="a clean root"
  cp "$program" "$library" "$work/there/tmp"
  chroot "$work/there" sh -c 'apt-get update -q && apt-get install -q -y --no-install-recommends /tmp/arrisline_*.deb' >"$work/install.log" 2>&1 ||
    { cat "$work/install.log"; exit 1; }
  # The examples as they are installed: a minimal root leaves docs out where its dpkg is told to.
  cp -r "$source/examples" "$work/there/tmp/examples"
  chroot "$work/there" sh -c "cd /tmp/examples && arrisline $plan" >"$work/printed"
  chroot "$work/there" dpkg -r arrisline >>"$work/install.log"
  if [ -e "$work/there/usr/bin/arrisline" ]; then
    echo "the program is still there when its package is removed"
    exit 1
  fi
else
  where="an unpacked package: no clean root could be made"
  dpkg-deb -x "$program" "$work/there"
  if ldd "$work/there/usr/bin/arrisline" | grep 'not found'; then exit 1; fi
  (cd "$work/there/usr/share/doc/arrisline/examples" && "$work/there/usr/bin/arrisline" $plan) >"$work/printed"
fi
cmp "$work/expected" "$work/printed"
rm -rf "$work/there"
echo "installed and run in $where"
