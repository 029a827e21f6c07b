// Whatever an operation makes of a pattern is written and read again, however long the names of the pattern
// are: what is called after them is refused where it would be longer than a name may be.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <nlohmann/json.hpp>

#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/pattern/place.hpp"
#include "support/evenly.hpp"
#include "support/generated_chains.hpp"
#include "support/generated_half.hpp"
#include "support/generated_seams.hpp"

namespace dartwright::testing {
namespace {

using nlohmann::ordered_json;
using Names = std::map<std::string, std::string>;

constexpr std::size_t most_letters_of_a_name = 200;

/// The name with letters added until it has so many.
std::string grown(const std::string& name, std::size_t letters, const std::string& letter) {
    std::string out = name;
    for (std::size_t k = name.size(); k < letters; ++k) out += letter;
    return out;
}

void find_names(const ordered_json& value, std::vector<std::string>& names) {
    for (const auto& [key, inner] : value.items()) {
        if ((key == "name" || key == "edge" || key == "dart") && inner.is_string()) names.push_back(inner);
        if (inner.is_structured()) find_names(inner, names);
    }
}

/// Keys are names in what is said of edges one by one.
ordered_json renamed(const ordered_json& value, const Names& names, bool are_keys_names = false) {
    const auto now = [&](const std::string& old) { return names.count(old) ? names.at(old) : old; };
    if (value.is_string()) return now(value.get<std::string>());
    if (!value.is_structured()) return value;
    ordered_json out = value.is_array() ? ordered_json::array() : ordered_json::object();
    for (const auto& [key, inner] : value.items()) {
        if (value.is_array())
            out.push_back(renamed(inner, names));
        else
            out[are_keys_names ? now(key) : key] = renamed(inner, names, key == "allowance" || key == "ends");
    }
    return out;
}

/// The pattern with every name grown, and what they were.
Pattern with_long_names(const Pattern& pattern, std::size_t letters, const std::string& letter,
                        Names& names) {
    ordered_json file = ordered_json::parse(write_pattern(pattern));
    file.erase("made");
    std::vector<std::string> found;
    find_names(file["pieces"], found);
    if (file.contains("seams")) find_names(file["seams"], found);
    for (const std::string& name : found) names[name] = grown(name, letters, letter);
    return read_pattern(renamed(file, names).dump(), "grown");
}

bool speaks_of_letters(const std::string& words) {
    return words.find(" letters or fewer") != std::string::npos ||
           words.find("shorten the names that it is made of") != std::string::npos;
}

enum class Became { done, refused_for_a_name, refused_otherwise };

Became became(bool is_for_a_name) {
    return is_for_a_name ? Became::refused_for_a_name : Became::refused_otherwise;
}

/// What an operation that was done makes is read again as it was.
Became what_became_of(const std::function<Pattern()>& operation) {
    Pattern made;
    try {
        made = operation();
    } catch (const Impossible& impossible) {
        return became(speaks_of_letters(impossible.what()));
    } catch (const BadWords& words) {
        return became(speaks_of_letters(words.what()));
    }
    const std::string text = write_pattern(made);
    try {
        RC_ASSERT(write_pattern(read_pattern(text, "made")) == text);
    } catch (const InvalidPattern& invalid) {
        RC_FAIL(std::string(invalid.what()));
    }
    return Became::done;
}

struct Asked {
    Pattern pattern;
    std::function<Pattern()> operation;
};

Asked of_piece(Pattern pattern) {
    const Piece& piece = pattern.pieces[0];
    const std::string name = piece.name;
    const std::string dart = any_dart(piece);
    const std::string place = any_place(piece);
    RC_PRE(!place.empty());
    switch (*evenly(0, 8)) {
        case 0:
            return {pattern, [=] {
                        return pivot(pattern, {name, dart, place, {}, {}, "", "", "", ""}).pattern;
                    }};
        case 1: {
            PivotRequest half{name, dart, place, {}, {}, "", "", "", ""};
            half.part.share = 0.5;
            return {pattern, [=] { return pivot(pattern, half).pattern; }};
        }
        case 2: {
            const std::string second = any_place(piece);
            return {pattern, [=] {
                        return split(pattern,
                                     {name, dart, {{place, 0.4, "", ""}, {second, 0.6, "", ""}}, {}, "", ""})
                            .pattern;
                    }};
        }
        case 3: {
            ClusterRequest request;
            request.piece = name;
            request.dart = dart;
            request.count = *evenly(2, 4);
            request.apart_mm = real_between(3, 10);
            return {pattern, [=] { return cluster(pattern, request).pattern; }};
        }
        case 4: {
            CloseSeamRequest request;
            request.piece = name;
            request.dart = dart;
            request.to = place;
            return {pattern, [=] { return close_as_seam(pattern, request).pattern; }};
        }
        case 5:
            return {pattern, [=] { return close_as_tuck(pattern, {name, dart, {}}).pattern; }};
        case 6:
            return {pattern, [=] {
                        return close_as_gathers(pattern, {name, dart, TakenIn::gathers, 40}).pattern;
                    }};
        default: {
            CloseFlareRequest request;
            request.piece = name;
            request.dart = dart;
            request.to = place;
            return {pattern, [=] { return close_as_flare(pattern, request).pattern; }};
        }
    }
}

Asked of_half(Pattern pattern) {
    OpenRequest request;
    request.piece = pattern.pieces[0].name;
    return {pattern, [=] { return open(pattern, request).pattern; }};
}

RC_GTEST_PROP(LongNames, AreReadAgainAfterEveryOperation, ()) {
    const bool is_half = *evenly(0, 4) == 0;
    const Pattern drawn = is_half ? any_half() : any_piece(true, *evenly(1, 3)).pattern;
    const auto letters = std::size_t(*evenly(180, int(most_letters_of_a_name) + 1));
    Names names;
    const Pattern pattern =
        with_long_names(drawn, letters, *rc::gen::element<std::string>("a", "é", "が"), names);
    RC_ASSERT(pattern.pieces[0].name == names.at(drawn.pieces[0].name));
    const Asked asked = is_half ? of_half(pattern) : of_piece(pattern);
    const Became what = what_became_of(asked.operation);
    // What is added to a name is a word or two and a number, or the name of an edge, which is as long.
    RC_CLASSIFY(what == Became::done, is_half ? "opened" : "done");
    RC_CLASSIFY(what == Became::done && letters > 190, "done with more than 190 letters");
    RC_CLASSIFY(what == Became::refused_for_a_name, "refused for a name");
}

// The words say how long it may be, and with that it is done.
TEST(LongNames, AreRefusedWithTheLengthThatIsDone) {
    Pattern pattern;
    pattern.name = "chorus";
    Piece piece;
    piece.name = "front";
    piece.outline.start = {0, 0};
    const auto edge = [&](const std::string& name, Point to) {
        piece.outline.items.push_back({EdgeItem{name, StraightShape{}, 0}, to});
    };
    DartItem dart;
    dart.name = "waist dart";
    dart.point = {100, 90};
    edge("waist", {90, 0});
    piece.outline.items.push_back({dart, {110, 0}});
    edge("waist", {200, 0});
    edge(std::string(197, 's'), {200, 300});
    edge("neck", {0, 300});
    edge("centre", {0, 0});
    pattern.pieces = {piece};
    const auto moved = [&](const std::string& side) {
        PivotRequest request{"front", "waist dart", side + "@50%", {}, {}, "centre", "", "", ""};
        request.part.share = 0.5;
        return pivot(pattern, request).pattern;
    };
    try {
        moved(std::string(197, 's'));
        ADD_FAILURE() << "a dart of 202 letters was made";
    } catch (const Impossible& impossible) {
        EXPECT_NE(impossible.reason.find("would have 202 letters, and 200 is the most"), std::string::npos)
            << impossible.what();
        EXPECT_NE(impossible.remedy.find("to 195 letters or fewer"), std::string::npos) << impossible.what();
    }
    const std::string shorter(195, 's');
    pattern.pieces[0].outline.items[3].as_edge()->edge = shorter;
    const Pattern made = moved(shorter);
    EXPECT_EQ(write_pattern(read_pattern(write_pattern(made), "made")), write_pattern(made));
}

}  // namespace
}  // namespace dartwright::testing
