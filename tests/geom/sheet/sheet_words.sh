#!/usr/bin/env bash
# The words of a plan set can be searched in its PDF: sheet_words.sh YARDWRIGHT SITE FOLDER
set -eu
out="$3/sheet_words.pdf"
"$1" sheet "$2" -o "$out"
text=$(pdftotext -layout "$out" -)
for words in "1 in = " "Spouts" "Items" "too flat" "needed" "raise" "Overhead lines" "Confined spaces" "Entrapment"; do
  grep -qF -- "$words" <<<"$text" || { echo "the PDF does not say: $words"; exit 1; }
done
