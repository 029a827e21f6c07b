#pragma once

// Drafts of a class: what students hand in, right and wrong, each with one thing changed.

#include <map>
#include <string>

#include "dartwright/assessing/assess.hpp"
#include "dartwright/assessing/criterion_names.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/files/exercise_file.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

inline Piece& piece_of(Pattern& pattern, const std::string& name) {
    return pattern.pieces[piece_index(pattern, name)];
}
inline std::size_t dart_item(const Piece& piece, const std::string& dart) {
    return find_dart(piece, dart).value();
}

/// Each piece as a similarity puts it down.
inline Pattern image(const Similarity& how, Pattern pattern) {
    for (Piece& piece : pattern.pieces) piece = image(how, std::move(piece));
    return pattern;
}
/// Every dart, edge and piece called otherwise.
inline Pattern renamed(Pattern pattern) {
    const auto other = [](std::string& name) {
        if (!name.empty() && name != "start" && name != "end") name = "my " + name;
    };
    for (Piece& piece : pattern.pieces) {
        other(piece.name);
        for (OutlineItem& item : piece.outline.items) {
            if (EdgeItem* edge = item.as_edge()) other(edge->edge);
            if (DartItem* dart = item.as_dart()) other(dart->name);
            if (DartItem* dart = item.as_dart()) other(dart->press);
        }
        for (Notch& notch : piece.notches) {
            other(notch.edge);
            other(notch.from);
        }
        for (auto& [edge, allowance] : piece.allowance) {
            other(edge);
            if (auto* stretches = std::get_if<std::vector<AllowanceStretch>>(&allowance))
                for (AllowanceStretch& each : *stretches) other(each.from);
        }
        if (piece.grain) other(piece.grain->along);
        if (!piece.cut) continue;
        other(piece.cut->fold);
        std::map<std::string, CornerIs> ends;
        for (const auto& [end, corner] : piece.cut->ends) ends.emplace("my " + end, corner);
        piece.cut->ends = ends;
    }
    pattern.seams.clear();
    return pattern;
}

/// Copied by a hand that misses every point by up to so much in x and in y, mm; closed as it was.
inline Pattern by_hand(Pattern pattern, double most_mm) {
    const auto miss = [&](Point& p) {
        p = p + Vector{real_between(-most_mm, most_mm), real_between(-most_mm, most_mm)};
    };
    for (Piece& piece : pattern.pieces) {
        Outline& outline = piece.outline;
        miss(outline.start);
        for (OutlineItem& item : outline.items) {
            miss(item.to);
            if (DartItem* dart = item.as_dart()) {
                miss(dart->point);
                if (dart->pivot) miss(*dart->pivot);
                continue;
            }
            Shape& shape = item.as_edge()->shape;
            if (auto* cubic = std::get_if<CubicShape>(&shape))
                for (Point& p : cubic->controls) miss(p);
            if (auto* spline = std::get_if<SplineShape>(&shape))
                for (Point& p : spline->through) miss(p);
        }
        outline.items.back().to = outline.start;
    }
    return pattern;
}

/// Criteria that lost marks, with the worst rung.
using Lost = std::map<std::string, std::string>;
inline Lost lost(const Assessment& assessment) {
    Lost out;
    if (!assessment.unread.empty()) out["unread"] = assessment.unread;
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& each : task.criteria)
            if (each.marks != each.of) out[word_of(each.criterion)] = each.rung;
    return out;
}
/// The lines that cost something, for the message of a failure.
inline std::string explained(const Assessment& assessment) {
    std::string out;
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& each : task.criteria)
            for (const JudgedLine& line : each.lines)
                if (line.rung != "full")
                    out += std::string(word_of(each.criterion)) + ": " + line.what + ": " +
                           std::to_string(line.expected.value_or(0)) + line.expected_words + ", found " +
                           std::to_string(line.found.value_or(0)) + line.found_words + ", off " +
                           std::to_string(line.difference.value_or(0)) + "\n";
    return out;
}

inline const JudgedCriterion* criterion_in(const Assessment& assessment, Criterion criterion) {
    for (const JudgedTask& task : assessment.tasks)
        for (const JudgedCriterion& each : task.criteria)
            if (each.criterion == criterion) return &each;
    return nullptr;
}

}  // namespace dartwright::testing
