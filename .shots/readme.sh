#!/usr/bin/env bash
# Takes the README's pictures from the real program, each at the same moment.
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p .pictures

# skip prints the keys that skip so many steps.
skip() { for _ in $(seq "$1"); do printf '\e[C'; done; }

go run ./.shots -out .pictures -session hallway-power \
	"rest=80x24@GET READY,<$(skip 32)>,REST+Round 2 of 4" \
	"work=80x24@GET READY,<$(skip 33)>,WORK+Round 2 of 4" \
	"side=80x24@GET READY,<$(skip 70)>,SWITCH SIDES+Hold"
go run ./.shots -out .pictures -session "" "choose=80x24@Hallway power"
