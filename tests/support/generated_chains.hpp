#pragma once

// Generated chains of operations on a pattern of one generated piece.

#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/split.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

inline std::string any_dart(const Piece& piece) {
    std::vector<std::string> names;
    for (const OutlineItem& item : piece.outline.items) {
        if (const DartItem* dart = item.as_dart()) names.push_back(dart->name);
    }
    return names[any_index_of(names)];
}

// One operation, or the pattern as it is where the one drawn is not possible.
inline Pattern any_step(const Pattern& pattern, int number) {
    const std::string dart = any_dart(pattern.pieces[0]);
    const std::string place = any_place(pattern.pieces[0]);
    const std::string name = std::string("step ") + std::to_string(number);
    if (place.empty()) return pattern;
    try {
        switch (*evenly(0, 3)) {
            case 0: {
                PivotRequest request{"piece", dart, place, {}, {}, "", name, "", ""};
                if (*rc::gen::arbitrary<bool>()) request.part.share = real_between(0.2, 0.8);
                return pivot(pattern, request).pattern;
            }
            case 1: {
                const std::string second = any_place(pattern.pieces[0]);
                if (second.empty()) return pattern;
                const SplitRequest request{
                    "piece", dart, {{place, 0.4, name, ""}, {second, 0.6, name + " b", ""}}, {}, "", ""};
                return split(pattern, request).pattern;
            }
            default: {
                const std::string with = any_dart(pattern.pieces[0]);
                if (with == dart) return pattern;
                return merge(pattern, {"piece", dart, with, "", ""}).pattern;
            }
        }
    } catch (const Impossible&) {
        return pattern;
    }
}

/// The steps are numbered from `first` on, for the names of what they open.
inline Pattern any_chain(Pattern pattern, int steps, int first = 0) {
    for (int step = first; step < first + steps; ++step) pattern = any_step(pattern, step);
    return pattern;
}

}  // namespace dartwright::testing
