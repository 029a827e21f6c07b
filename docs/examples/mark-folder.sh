#!/bin/sh
# mark-folder.sh BLOCK FOLDER: one line for every draft in the folder: true or not, and whether it kept what
# moving darts must keep of the block. Exit status 1 if a draft did not pass, 3 if one could not be read.
set -u
block=$1 folder=$2
worst=0
for draft in "$folder"/*.json; do
    [ -e "$draft" ] || { echo "$folder: no drafts" >&2; exit 2; }
    dartwright check "$draft" > /dev/null 2>&1
    checked=$?
    dartwright compare "$block" "$draft" > /dev/null 2>&1
    kept=$?
    case $checked in
    0) words='true' ;;
    1) words='not true' ;;
    *) words='cannot be read' ;;
    esac
    [ "$checked" -gt 1 ] || case $kept in
    0) words="$words, nothing lost" ;;
    1) words="$words, something lost" ;;
    *) words="$words, cannot be compared" ;;
    esac
    printf '%s: %s\n' "$draft" "$words"
    for status in $checked $kept; do [ "$status" -le "$worst" ] || worst=$status; done
done
exit "$worst"
