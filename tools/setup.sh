# shellcheck shell=bash
# SPDX-License-Identifier: Apache-2.0
# Shared by first-run and test: numbered steps with their time, Debian packages, build. To be sourced.

# start_steps N: from now on `step TEXT` prints "k/N TEXT (time so far)".
start_steps()
{
  n_steps=$1
  this_step=0
  SECONDS=0
}

elapsed()
{
  printf '%d min %02d s' $((SECONDS / 60)) $((SECONDS % 60))
}

step()
{
  this_step=$((this_step + 1))
  printf '\n%d/%d %s  [%s]\n' "$this_step" "$n_steps" "$1" "$(elapsed)" >&2
}

stop()
{
  printf '%s\n' "$1" >&2
  exit 1
}

# install_packages [all]: install what tools/packages.txt names and the machine lacks; without "all" only what the program
# itself needs. Only this part needs root.
install_packages()
{
  local last='^# browser tests'
  [ "${1:-}" = all ] && last='^# no such line'
  local package missing=()
  command -v dpkg-query >/dev/null || stop "This needs Debian 12 or a system that uses its packages."
  while read -r package; do
    # Some builds of nodejs bring npm along and refuse the package of that name.
    [ "$package" = npm ] && command -v npm >/dev/null && continue
    dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed || missing+=("$package")
  done < <(sed "/$last/,\$d" tools/packages.txt | grep -v -e '^#' -e '^$')
  if [ ${#missing[@]} -eq 0 ]; then
    echo "all packages of tools/packages.txt are there" >&2
    return
  fi
  if [ "$(id -u)" -ne 0 ]; then
    stop "Missing packages: ${missing[*]}
Ask an administrator to run: apt-get install --no-install-recommends ${missing[*]}"
  fi
  echo "installing ${missing[*]} and what they need (up to 1.6 GB on a bare system)" >&2
  export DEBIAN_FRONTEND=noninteractive
  apt-get -qq update >&2
  apt-get -qq -o Dpkg::Use-Pty=0 install --yes --no-install-recommends "${missing[@]}" >&2
}

# The exact npm packages of the lock file that bundle and test the report page; nothing to do when they are there.
install_page_packages()
{
  local there=tools/output/report/node_modules/.package-lock.json
  if [ -f "$there" ] && [ ! tools/output/report/package-lock.json -nt "$there" ]; then
    echo "npm packages of the report page are there" >&2
    return
  fi
  npm ci --prefix tools/output/report --ignore-scripts --no-audit --no-fund --loglevel error >&2
}

# build TARGET...: configure the release preset and build those targets of it ("all": everything).
# One compiler takes up to 1.5 GB, so memory limits the number of jobs as well as processors do.
build()
{
  local n_processors memory_jobs n_jobs
  n_processors=$(nproc)
  memory_jobs=$(awk '/^MemAvailable/ {print int($2 / 1500000)}' /proc/meminfo)
  n_jobs=$((memory_jobs < n_processors ? memory_jobs : n_processors))
  mkdir -p build
  cmake --preset release >build/configure.log 2>&1 || stop "$(tail -n 40 build/configure.log)"
  cmake --build --preset release --parallel $((n_jobs > 0 ? n_jobs : 1)) --target "$@" >&2
}
