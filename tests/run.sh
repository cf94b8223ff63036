#!/usr/bin/env bash
# Installs what is missing, builds everything, runs every test, and ends with a plain count.
#   tests/run.sh [--only native|sanitize|fuzz|web|bench]... [--no-install]
# Works as root or through sudo. Output of each part goes to build/logs/. Exit 1 when anything failed.
set -uo pipefail
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
logs=$root/build/logs
jobs=$(nproc)
parts=()
install=yes
while [ $# -gt 0 ]; do
  case $1 in
    --only) parts+=("${2:?--only needs a part}"); shift 2 ;;
    --no-install) install=no; shift ;;
    -h|--help) sed -n '2,4s/^# \?//p' "$0"; exit 0 ;;
    *) echo "tests/run.sh: unknown option $1 (--help tells)" >&2; exit 2 ;;
  esac
done
[ ${#parts[@]} -gt 0 ] || parts=(native sanitize fuzz web bench)
for part in "${parts[@]}"; do
  case $part in native|sanitize|fuzz|web|bench) ;; *) echo "tests/run.sh: no part named $part" >&2; exit 2 ;; esac
done
wanted() { local p; for p in "${parts[@]}"; do [ "$p" = "$1" ] && return 0; done; return 1; }
mkdir -p "$logs"

passed=0
failed=0
broken=()
step() { printf '\n== %s  (%dm%02ds)\n' "$*" $((SECONDS / 60)) $((SECONDS % 60)); }
good() { passed=$((passed + ${1:-1})); }
bad() { failed=$((failed + 1)); broken+=("$1"); echo "  FAILED: $1"; }
# quietly NAME COMMAND...: one step that must work; its output is shown only when it did not.
quietly() {
  local name=$1; shift
  if "$@" > "$logs/$name.log" 2>&1; then return 0; fi
  tail -n 40 "$logs/$name.log"
  bad "$name"
  return 1
}

# Counts ctest's own result, one test program each.
run_ctest() {  # NAME BUILD [ctest options]
  local name=$1 build=$2; shift 2
  ctest --test-dir "$build" --output-on-failure -j "$jobs" --timeout 900 "$@" > "$logs/$name.log" 2>&1
  local total lost
  total=$(sed -n 's/.*tests passed, [0-9]* tests\{0,1\} failed out of \([0-9]*\).*/\1/p' "$logs/$name.log" | tail -n1)
  lost=$(sed -n 's/.*tests passed, \([0-9]*\) tests\{0,1\} failed out of .*/\1/p' "$logs/$name.log" | tail -n1)
  if [ -z "$total" ] || [ "$total" = 0 ]; then tail -n 40 "$logs/$name.log"; bad "$name: no test ran"; return; fi
  good $((total - lost))
  if [ "$lost" != 0 ]; then
    sed -n '/^The following tests FAILED/,$p' "$logs/$name.log"
    grep -aE -A12 'ERROR:|runtime error|TEST CASE:' "$logs/$name.log" | head -n 80
    failed=$((failed + lost)); broken+=("$name: $lost of $total")
  fi
  echo "  $((total - lost)) of $total test programs passed"
}

# ---------------------------------------------------------------- install

if [ "$install" = yes ]; then
  step "Packages"
  . "$root/web/packages.sh"
  packages=("${BUILD_PACKAGES[@]}" g++ doctest-dev)
  ! wanted native || packages+=(ngspice libngspice0-dev units libdlib-dev)
  ! wanted sanitize && ! wanted fuzz || packages+=(clang++-14=clang-14 libclang-rt-14-dev libfuzzer-14-dev)
  ! wanted bench || packages+=(libbenchmark-dev)
  ! wanted web || packages+=(npm=npm chromium=chromium firefox-esr=firefox-esr Xvfb=xvfb brotli=brotli)
  need_packages "${packages[@]}" || exit 1
fi
"$root/web/get-imgui.sh" || exit 1

configure() {  # NAME BUILD options...
  local name=$1 build=$2; shift 2
  quietly "configure-$name" cmake -S "$root" -B "$build" -G Ninja "$@"
}

# ---------------------------------------------------------------- native

native=$root/build/native
if wanted native || wanted bench; then
  step "Native build (Release)"
  if configure native "$native" -DCMAKE_BUILD_TYPE=Release && quietly build-native cmake --build "$native" -j "$jobs"; then
    if wanted native; then
      step "Native tests"
      run_ctest native "$native"
    fi
  fi
fi

# ---------------------------------------------------------------- sanitizers

sanitize=$root/build/sanitize
if wanted sanitize || wanted fuzz; then
  step "Build with sanitizers (clang 14)"
  clang_options=(-DCMAKE_BUILD_TYPE=RelWithDebInfo "-DCMAKE_CXX_FLAGS_RELWITHDEBINFO=-O1 -g1" -DBRANCHLIGHT_SANITIZE=ON)
  ! command -v clang++-14 >/dev/null || clang_options+=(-DCMAKE_C_COMPILER=clang-14 -DCMAKE_CXX_COMPILER=clang++-14)
  if configure sanitize "$sanitize" "${clang_options[@]}" && quietly build-sanitize cmake --build "$sanitize" -j "$jobs"; then
    export ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=print_stacktrace=1
    if wanted sanitize; then
      step "Tests with sanitizers, shortened"
      BRANCHLIGHT_QUICK=1 run_ctest sanitize "$sanitize"
    fi
    if wanted fuzz; then
      step "Fuzzers, 30 s each"
      found=0
      for fuzzer in $(find "$sanitize" -type f -executable -name 'fuzz_*' | sort); do
        found=1
        name=$(basename "$fuzzer")
        corpus=$root/build/corpus/$name
        mkdir -p "$corpus"
        if quietly "$name" "$fuzzer" -max_total_time=30 -max_len=20000 -timeout=20 -rss_limit_mb=1024 \
             -print_final_stats=1 -artifact_prefix="$logs/$name-" "$corpus" "$root"/tests/documents/*/ "$root"/tests/fuzz/traces; then
          good
          echo "  $name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$logs/$name.log") inputs, none crashed"
        fi
      done
      [ $found = 1 ] || bad "fuzz: no fuzzer was built"
    fi
  fi
fi

# ---------------------------------------------------------------- browser

if wanted web; then
  step "App for the browser"
  if quietly build-app "$root/web/build.sh" --dist "$root/dist"; then
    tail -n 1 "$logs/build-app.log"
    step "Browser tests"
    export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 PUPPETEER_SKIP_DOWNLOAD=1
    lock=$root/tests/web/package-lock.json
    if cmp -s "$lock" "$root/tests/web/node_modules/.installed-from" \
       || { quietly npm-ci npm --prefix "$root/tests/web" ci && cp "$lock" "$root/tests/web/node_modules/.installed-from"; }; then
      ( cd "$root/tests/web" && node --test --test-reporter=tap ./*.test.mjs ) 2>&1 | tee "$logs/web.log" | grep -aE '^ *not ok|# measured' | sed 's/^ */  /' || true
      ok=$(sed -n 's/^# pass \([0-9]*\)/\1/p' "$logs/web.log" | tail -n1)
      lost=$(sed -n 's/^# fail \([0-9]*\)/\1/p' "$logs/web.log" | tail -n1)
      cancelled=$(sed -n 's/^# cancelled \([0-9]*\)/\1/p' "$logs/web.log" | tail -n1)
      lost=$((${lost:-0} + ${cancelled:-0}))
      if [ "${ok:-0}" = 0 ] && [ "$lost" = 0 ]; then tail -n 40 "$logs/web.log"; bad "web: no test ran"; fi
      good "${ok:-0}"
      if [ "$lost" != 0 ]; then
        failed=$((failed + lost)); broken+=("web: $lost")
        grep -aE -A25 '^ *not ok' "$logs/web.log" | head -n 150
      fi
      echo "  ${ok:-0} passed, $lost failed"
    fi
  fi
fi

# ---------------------------------------------------------------- benchmarks

if wanted bench && [ -d "$native" ]; then
  step "Benchmarks (figures of this machine; ratios travel better)"
  for bench in $(find "$native" -type f -executable -name '*_bench' | sort); do
    name=$(basename "$bench")
    few=()                      # the full counts take hours on a small machine: by hand
    case $name in evaluation_bench) few=(--cases 100) ;; optimum_bench) few=(--cases 4) ;; esac
    if quietly "$name" "$bench" "${few[@]+"${few[@]}"}"; then good; sed 's/^/  /' "$logs/$name.log"; fi
  done
fi

if wanted bench && [ -f "$root/dist/index.html" ] && [ -d "$root/tests/web/node_modules" ]; then
  step "Benchmarks in the browser"
  if quietly browser-bench node "$root/tests/web/bench.mjs"; then good; sed 's/^/  /' "$logs/browser-bench.log"; fi
fi

step "Done"
for name in "${broken[@]+"${broken[@]}"}"; do echo "  failed: $name"; done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
