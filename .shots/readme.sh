#!/usr/bin/env bash
# Takes the README's pictures from the real program, each at the same moment.
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p .pictures

# What is read before a first run, and then so many steps skipped.
start="Before the first session,<$(printf '\r')>,Indoor shoes,<$(printf '\r')>,GET READY"
skip() { for _ in $(seq "$1"); do printf '\e[C'; done; }

go run ./.shots -out .pictures -session hallway-power \
	"rest=80x24@$start,<$(skip 32)>,REST+Round 2 of 4" \
	"work=80x24@$start,<$(skip 33)>,WORK+Round 2 of 4" \
	"side=80x24@$start,<$(skip 62)>,SWITCH SIDES"
go run ./.shots -out .pictures -session "" "choose=80x24@Hallway power"
