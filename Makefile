# The front door. `make help` says what there is. On a fresh Debian 12 machine: apt-get install -y make
#
# Everything built goes into build/; nothing outside it is written, except packages by `make setup`.

JOBS ?= $(shell n=$$(nproc 2>/dev/null || echo 1); if [ $$n -gt 2 ]; then n=2; fi; echo $$n)
FUZZ_SECONDS ?= 10

release := build/release
program := build/benchbell

.DELETE_ON_ERROR:
.PHONY: build help setup demo test test-release test-browser test-asan test-tsan fuzz bench \
  ui ui-check mutants check check-format check-layers check-words check-tidy check-all format coverage clean

build: ## build the program with its pages (make, on its own, does this)
	@tools/ui.sh
	@tools/configure.sh release $$(tools/ui_setting.sh)
	@cmake --build $(release) --parallel $(JOBS) --target bin/benchbell
	@ln -sfn release/bin/benchbell $(program)

help: ## this list
	@awk -F ':[^#]*## ' '/^[a-z-]+:.*## / { printf "make %-14s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

setup: ## install all Debian packages that any of this needs
	@tools/setup.sh demo pages test browser check coverage

ui: ## build the pages into build/ui; the program then carries them
	@tools/setup.sh pages
	@tools/ui.sh build

ui-check: ## check the pages: types, style, format, tests
	@tools/setup.sh pages
	@tools/ui.sh check

demo: ## install what is needed, build, plan the demo lessons, draw them
	@tools/setup.sh demo pages
	@$(MAKE) --no-print-directory build
	@tools/demo.sh $(program) build/demo

test: ## install what is needed, build, run all tests: release, pages in a browser, sanitizers, a short fuzz run
	@tools/setup.sh demo pages test browser
	@$(MAKE) --no-print-directory test-release
	@tools/browser.sh
	@$(MAKE) --no-print-directory test-asan fuzz
	@echo "All tests passed."

test-release: ## all tests, as shipped
	@tools/ui.sh
	@tools/configure.sh release -DBENCHBELL_TESTS=ON $$(tools/ui_setting.sh)
	@cmake --build $(release) --parallel $(JOBS)
	@ln -sfn release/bin/benchbell $(program)
	@ctest --test-dir $(release) --parallel $(JOBS) --output-on-failure --no-tests=error

test-browser: ## the pages in a browser: a teacher's first day, accessibility, two writers, no connection
	@tools/setup.sh demo pages browser
	@$(MAKE) --no-print-directory build
	@tools/browser.sh

test-asan: ## unit tests with the address and undefined-behaviour sanitizers
	@tools/configure.sh asan
	@cmake --build build/asan --parallel $(JOBS) --target unit_tests
	@ctest --test-dir build/asan --parallel $(JOBS) --output-on-failure --no-tests=error --label-regex unit

test-tsan: ## unit tests with the thread sanitizer
	@tools/configure.sh tsan
	@cmake --build build/tsan --parallel $(JOBS) --target unit_tests
	@ctest --test-dir build/tsan --parallel $(JOBS) --output-on-failure --no-tests=error --label-regex unit

mutants: ## does a test notice when an explanation or a rule loses a literal? At least 95 in 100
	@tools/setup.sh demo test
	@tools/configure.sh mutants
	@cmake --build build/mutants --parallel $(JOBS) --target scheduler_test proof_check_test scheduler_reference_test
	@tools/mutants.py build/mutants

fuzz: ## feed the file reader with rubbish for FUZZ_SECONDS (10)
	@tools/configure.sh fuzz
	@cmake --build build/fuzz --parallel $(JOBS) --target fuzz_programs
	@tools/fuzz.sh build/fuzz $(FUZZ_SECONDS)

bench: ## measure: plans, chances, memory
	@tools/setup.sh demo
	@tools/configure.sh release -DBENCHBELL_BENCH=ON
	@cmake --build $(release) --parallel $(JOBS)
	@tools/bench.sh $(release)

check: ## format, layers, words, and clang-tidy on what changed since it last passed
	@tools/setup.sh demo test check
	@$(MAKE) --no-print-directory check-format check-layers check-words check-tidy

check-format:
	@tools/check_format.sh

check-layers:
	@tools/check_layers.py

check-words:
	@tools/check_words.sh

check-tidy:
	@tools/configure.sh tidy
	@cmake --build build/tidy --target generated
	@tools/tidy.py build/tidy --jobs $(JOBS)

check-all: ## check, then test, then mutants
	@$(MAKE) --no-print-directory check test mutants

format: ## format all sources
	@tools/check_format.sh --fix

coverage: ## which lines the unit tests reach
	@tools/setup.sh demo coverage
	@tools/configure.sh coverage
	@cmake --build build/coverage --parallel $(JOBS) --target unit_tests
	@find build/coverage -name '*.gcda' -delete
	@ctest --test-dir build/coverage --parallel $(JOBS) --output-on-failure --no-tests=error --label-regex unit
	@mkdir -p build/coverage/report
	@gcovr --root . --filter src/ --object-directory build/coverage --exclude-unreachable-branches \
	  --html-details build/coverage/report/index.html --txt build/coverage/report/summary.txt
	@cat build/coverage/report/summary.txt
	@echo "Line by line: build/coverage/report/index.html"

clean: ## remove everything that was built
	@rm -rf build
