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

# ---------------------------------------------------------------- where the time goes

spent=()           # lines of the table at the end
step_name=
step_began=0
# step NAME: what is done from here on, until the next one.
step() {
  [ -z "$step_name" ] || spent+=("$(printf '%5d s  %s' $((SECONDS - step_began)) "$step_name")")
  step_name=$1
  step_began=$SECONDS
  printf '\n== %s  (%dm%02ds)\n' "$1" $((SECONDS / 60)) $((SECONDS % 60))
}

# Counts ctest's own result, one test program each.
run_ctest() {  # NAME BUILD [ctest options]
  local name=$1 build=$2; shift 2
  "${gently[@]+"${gently[@]}"}" ctest --test-dir "$build" --output-on-failure -j "$jobs" --timeout 900 "$@" > "$logs/$name.log" 2>&1
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

step "Packages"
if [ "$install" = yes ]; then
  . "$root/web/packages.sh"
  packages=("${BUILD_PACKAGES[@]}" g++ doctest-dev)
  ! wanted native || packages+=(ngspice libngspice0-dev units libdlib-dev clang-format-14=clang-format-14)
  ! wanted sanitize && ! wanted fuzz || packages+=(clang++-14=clang-14 libclang-rt-14-dev libfuzzer-14-dev)
  ! wanted bench || packages+=(libbenchmark-dev)
  ! wanted web || packages+=(npm=npm chromium=chromium firefox-esr=firefox-esr Xvfb=xvfb brotli=brotli)
  need_packages "${packages[@]}" || exit 1
fi
"$root/web/get-imgui.sh" || exit 1

# Eight files of a room are compiled as one, which halves the time: most of it goes into reading headers.
configure() {  # NAME BUILD options...
  local name=$1 build=$2; shift 2
  quietly "configure-$name" cmake -S "$root" -B "$build" -G Ninja -DCMAKE_UNITY_BUILD=ON -DCMAKE_UNITY_BUILD_BATCH_SIZE=8 "$@"
}
build() {  # NAME BUILD
  quietly "build-$1" "${gently[@]+"${gently[@]}"}" cmake --build "$2" -j "$jobs"
}

# ---------------------------------------------------------------- browser

# The browser tests wait more than they work, on a phone's pace: they run beside what follows, which then goes
# gently, so that they notice nothing of it.
gently=()
web_job=
blank_job=
browser_tests() {
  cd "$root/tests/web" || exit 1
  node --test --test-concurrency=2 --test-reporter=tap ./*.test.mjs > "$logs/web.log" 2>&1
  echo "$SECONDS" > "$logs/web-ended"
}
start_browser_tests() {
  export PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 PUPPETEER_SKIP_DOWNLOAD=1
  local lock=$root/tests/web/package-lock.json
  cmp -s "$lock" "$root/tests/web/node_modules/.installed-from" \
    || { quietly npm-ci npm --prefix "$root/tests/web" ci && cp "$lock" "$root/tests/web/node_modules/.installed-from"; } \
    || return
  web_began=$SECONDS
  browser_tests &
  web_job=$!
  gently=(nice -n 19)
  # What the benchmarks compare the start with; it compiles one file after the other.
  if wanted bench; then
    "${gently[@]}" node -e "import('$root/tests/web/blank/build.mjs').then((blank) => blank.buildBlank())" > "$logs/blank.log" 2>&1 &
    blank_job=$!
  fi
}
end_browser_tests() {
  wait "$web_job"
  grep -aE '^ *not ok|# measured' "$logs/web.log" | sed 's/^ */  /'
  local ok lost cancelled
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
  spent+=("$(printf '%5d s  %s' $(($(cat "$logs/web-ended") - web_began)) "Browser tests, two files at a time, beside the others")")
  gently=()
}

if wanted web; then
  step "App for the browser"
  if quietly build-app "$root/web/build.sh" --dist "$root/dist"; then
    tail -n 1 "$logs/build-app.log"
    start_browser_tests
  fi
fi

# ---------------------------------------------------------------- native

native=$root/build/test/native       # not those of the presets, which compile each file on its own
if wanted native; then
  step "Format"
  if quietly format "$root/tests/format.sh" --check; then good; tail -n 1 "$logs/format.log" | sed 's/^/  /'; fi
fi
if wanted native || wanted bench; then
  step "Native build (Release)"
  if configure native "$native" -DCMAKE_BUILD_TYPE=Release "-DCMAKE_CXX_FLAGS_RELEASE=-O2 -DNDEBUG" && build native "$native" && wanted native; then
    step "Native tests"
    run_ctest native "$native"
    step "Mutations: a sample, and every row against its file"
    if quietly mutation "${gently[@]+"${gently[@]}"}" node "$root/tests/mutation/run.mjs" --build "$native" --sample 8; then
      good
      tail -n 1 "$logs/mutation.log" | sed 's/^/  /'
    fi
  fi
fi

# ---------------------------------------------------------------- sanitizers

# So many inputs each, about ten seconds' worth; what they find new is kept in build/corpus for the next time.
fuzz() {  # PROGRAM
  local name runs=20000
  name=$(basename "$1")
  case $name in fuzz_circuit_file) runs=40000 ;; fuzz_trace_record) runs=12000 ;; esac
  mkdir -p "$root/build/corpus/$name"
  "$1" -runs=$runs -max_total_time=120 -max_len=20000 -timeout=20 -rss_limit_mb=1024 -print_final_stats=1 \
    -artifact_prefix="$logs/$name-" "$root/build/corpus/$name" "$root"/tests/documents/*/ "$root/tests/fuzz/traces" > "$logs/$name.log" 2>&1
}

sanitize=$root/build/test/sanitize
if wanted sanitize || wanted fuzz; then
  step "Build with sanitizers (clang 14)"
  clang_options=(-DCMAKE_BUILD_TYPE=RelWithDebInfo "-DCMAKE_CXX_FLAGS_RELWITHDEBINFO=-O1 -g1" -DBRANCHLIGHT_SANITIZE=ON)
  ! command -v clang++-14 >/dev/null || clang_options+=(-DCMAKE_C_COMPILER=clang-14 -DCMAKE_CXX_COMPILER=clang++-14)
  if configure sanitize "$sanitize" "${clang_options[@]}" && build sanitize "$sanitize"; then
    export ASAN_OPTIONS=detect_leaks=1 UBSAN_OPTIONS=print_stacktrace=1
    if wanted sanitize; then
      step "Tests with sanitizers, shortened"
      BRANCHLIGHT_QUICK=1 run_ctest sanitize "$sanitize"
    fi
    if wanted fuzz; then
      step "Fuzzers, all at once"
      fuzzers=() fuzz_jobs=()
      while IFS= read -r fuzzer; do
        fuzzers+=("$fuzzer")
        fuzz "$fuzzer" &
        fuzz_jobs+=($!)
      done < <(find "$sanitize" -type f -executable -name 'fuzz_*' | sort)
      [ ${#fuzzers[@]} -gt 0 ] || bad "fuzz: no fuzzer was built"
      for i in "${!fuzzers[@]}"; do
        name=$(basename "${fuzzers[i]}")
        if wait "${fuzz_jobs[i]}"; then
          good
          echo "  $name: $(sed -n 's/^stat::number_of_executed_units: *//p' "$logs/$name.log") inputs, none crashed"
        else
          tail -n 40 "$logs/$name.log"
          bad "$name"
        fi
      done
    fi
  fi
fi

if [ -n "$web_job" ]; then
  step "Browser tests, what is left of them"
  end_browser_tests
fi

# ---------------------------------------------------------------- benchmarks

if wanted bench && [ -d "$native" ]; then
  step "Benchmarks (figures of this machine; ratios travel better)"
  while IFS= read -r bench; do
    name=$(basename "$bench")
    few=()                      # the full counts take hours on a small machine: by hand
    case $name in evaluation_bench) few=(--cases 20) ;; optimum_bench) few=(--cases 2) ;; esac
    if quietly "$name" "$bench" "${few[@]+"${few[@]}"}"; then good; sed 's/^/  /' "$logs/$name.log"; fi
  done < <(find "$native" -type f -executable -name '*_bench' | sort)
fi

if wanted bench && [ -f "$root/dist/index.html" ] && [ -d "$root/tests/web/node_modules" ]; then
  step "Benchmarks in the browser"
  [ -z "$blank_job" ] || wait "$blank_job"
  if quietly browser-bench node "$root/tests/web/bench.mjs"; then good; sed 's/^/  /' "$logs/browser-bench.log"; fi
fi

step "Where the time went"
printf '%s\n' "${spent[@]}"
printf '%5d s  %s\n' "$SECONDS" "the whole"
for name in "${broken[@]+"${broken[@]}"}"; do echo "  failed: $name"; done
echo "$passed passed, $failed failed"
[ "$failed" -eq 0 ]
