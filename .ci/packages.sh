# Sourced by the scripts that need Debian packages.

# What building the program and its tests takes.
# shellcheck disable=SC2034 # read by the scripts
build_packages='g++ cmake ninja-build pkg-config libcli11-dev nlohmann-json3-dev catch2 libpolyclipping-dev
  coinor-libcbc-dev zlib1g-dev libtbb-dev libcairo2-dev libeigen3-dev libexpat1-dev'

# What the tests run besides.
# shellcheck disable=SC2034
test_packages='locales glpk-utils libxml2-utils librsvg2-bin poppler-utils chromium chromium-driver python3
  lintian mmdebstrap zsh fish mandoc man-db vim'

# need_packages NAME...: installs those that are missing, or says which they are and stops.
need_packages() {
  missing=
  for package in "$@"; do
    # One that another package only names has the state "not-installed".
    case $(dpkg-query -W -f '/${db:Status-Status}/' "$package" 2>/dev/null || true) in
      */installed/*) ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0

  if ! command -v apt-get >/dev/null 2>&1; then
    echo "These packages are missing, and there is no apt-get to install them:$missing" >&2
    exit 1
  elif [ "$(id -u)" -eq 0 ]; then
    as_root=
  elif command -v sudo >/dev/null 2>&1; then
    as_root=sudo
  else
    echo "These packages are missing:$missing" >&2
    echo "Install them as root: apt-get install --no-install-recommends$missing" >&2
    exit 1
  fi
  echo "installing$missing ..." >&2
  # Package lists may be absent or old on a fresh machine.
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get update -q >&2
  # shellcheck disable=SC2086 # one word a package
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing >&2
}
