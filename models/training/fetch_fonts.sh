#!/bin/sh
# Fetches the faces of fonts.tsv from the npm registry (WOFF files and licence only): sh fetch_fonts.sh FONTS_DIR
set -eu
mkdir -p "$1"; cd "$1"
tail -n +2 "$OLDPWD/fonts.tsv" | cut -f1,2 | sort -u | while read -r package version; do
  name=${package#@fontsource/}
  [ -d "$name" ] && continue
  file=$(npm pack --silent "$package@$version" | tail -1)
  mkdir -p "$name"
  tar xzf "$file" -C "$name" --strip-components=1 --wildcards 'package/package.json' 'package/LICENSE' 'package/files/*.woff'
  rm -f "$file"
done
