# Sourced by web/serve.sh and tests/run.sh: installs what is missing on Debian and its kin.
#   need_packages WHAT...   each WHAT is a package, or command=package: fine when the command is there,
#                           wherever it came from (Node.js often does not come from the distribution).

missing_packages() {
  local what
  for what in "$@"; do
    case $what in
      *=*) command -v "${what%%=*}" >/dev/null 2>&1 || echo "${what#*=}" ;;
      *) dpkg-query -W -f='${db:Status-Status}' "$what" 2>/dev/null | grep -qx installed || echo "$what" ;;
    esac
  done
}

need_packages() {
  if ! command -v apt-get >/dev/null 2>&1; then
    echo "  No apt-get here; needed, under whatever names your system gives them:"
    printf '    %s\n' "${@#*=}"
    return 0
  fi
  local missing as_root=()
  missing=$(missing_packages "$@")
  if [ -z "$missing" ]; then echo "  everything is installed"; return 0; fi
  # shellcheck disable=SC2086
  echo "  installing:" $missing
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null 2>&1 || { echo "  Not root and no sudo: install the above yourself, then run this again." >&2; return 1; }
    as_root=(sudo)
  fi
  "${as_root[@]}" apt-get update -qq
  # shellcheck disable=SC2086
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
}

BUILD_PACKAGES=(cmake=cmake ninja=ninja-build em++=emscripten node=nodejs terser=terser ccache=ccache
  nlohmann-json3-dev libeigen3-dev ca-certificates)
