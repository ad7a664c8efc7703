# Shell functions shared by contrib/demo, contrib/test, contrib/nightly and .ci/run. Sourced, not run.
# The caller sets `root` to the top of the source tree and is in it.
# shellcheck shell=sh disable=SC2154

say() { printf '%s\n' "== $*"; }
complain() { printf '%s\n' "$*" >&2; }

# packages_of SECTION...: the packages of these sections of contrib/packages.txt, one a line.
packages_of() {
  for section in "$@"; do
    awk -v want="[$section]" '/^\[/ { here = ($1 == want); next } here && NF && $1 !~ /^#/ { print $1 }' \
      "$root/contrib/packages.txt"
  done
}

# missing_of SECTION...: those of the packages that are not installed.
missing_of() {
  for package in $(packages_of "$@"); do
    # Newer Node.js packages bring npm along and stand against the package of that name.
    [ "$package" != npm ] || ! command -v npm >/dev/null || continue
    case $(dpkg-query -W -f='${db:Status-Abbrev}' "$package" 2>/dev/null || true) in
      ?i*) ;;
      *) printf '%s\n' "$package" ;;
    esac
  done
}

# install_packages SECTION...: installs what is missing, or says what to install and fails.
install_packages() {
  if ! command -v apt-get >/dev/null || ! command -v dpkg-query >/dev/null; then
    say "this is not a Debian system: install by hand what contrib/packages.txt names; going on"
    return 0
  fi
  missing=$(missing_of "$@" | tr '\n' ' ')
  missing=${missing% }
  [ -n "$missing" ] || return 0

  if [ "$(id -u)" -eq 0 ]; then
    as_root=
  elif command -v sudo >/dev/null && { sudo -n true 2>/dev/null || [ -t 0 ]; }; then
    as_root=sudo
  else
    complain "missing packages: $missing"
    complain "  hint: as root, run: apt-get update && apt-get install --no-install-recommends $missing"
    return 1
  fi
  say "installing packages: $missing (log: build/packages.log)"
  fresh_log packages
  # shellcheck disable=SC2086  # one word a package
  {
    logged packages $as_root apt-get update &&
      logged packages $as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install --yes --no-install-recommends $missing
  }
}

# logged NAME COMMAND...: runs the command quietly; its output is added to build/NAME.log, and the part that
# matters is shown if it fails.
logged() {
  log=$root/build/$1.log
  shift
  mkdir -p "$root/build"
  printf '%s\n' "\$ $*" >>"$log"
  lines_before=$(wc -l <"$log")
  if "$@" >>"$log" 2>&1 </dev/null; then
    return 0
  fi
  complain "failed: $*"
  tail -n +"$((lines_before + 1))" "$log" |
    awk '/^FAILED:/ { found = 1 } { all[NR] = $0 } found && n < 60 { print; n++ }
         END { if (!found) for (i = (NR > 40 ? NR - 39 : 1); i <= NR; i++) print all[i] }' >&2
  complain "  the whole log: $log"
  return 1
}

# fresh_log NAME: forgets the log of the last run.
fresh_log() {
  mkdir -p "$root/build"
  : >"$root/build/$1.log"
}

# build_preset LOG PRESET: configures and builds everything of a preset.
build_preset() {
  say "building $2 (log: build/$1.log)"
  logged "$1" cmake --preset "$2" && logged "$1" cmake --build --preset "$2"
}

# run_tests PRESET [CTEST-OPTION...]: CTest's own report, its summary last, its exit code.
run_tests() {
  preset=$1
  shift
  say "testing $preset"
  ctest --preset "$preset" --parallel "$(nproc)" "$@"
}
