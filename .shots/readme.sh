#!/usr/bin/env bash
# Takes the README's pictures from the real program.
set -euo pipefail
cd "$(dirname "$0")/.."
mkdir -p .pictures
right=$'\e[C'
rest="" # skips to the first rest between jumps
for _ in $(seq 26); do rest+="$right"; done
go run ./.shots -out .pictures -session hallway-power \
	"rest=80x24@GET READY,<$rest>,REST"
go run ./.shots -out .pictures -session hallway-power \
	"work=80x24@GET READY,<$right>,WORK"
