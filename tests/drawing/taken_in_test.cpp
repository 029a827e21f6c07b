// What is gathered, eased, tucked and pressed is said on paper, once each, with figures that are worked out
// here anew: lengths by Boost's quadrature, places from the items themselves.

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <map>

#include "dartwright/cutting/applied_rule.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/drawing/cutting_drawing.hpp"
#include "dartwright/drawing/pattern_drawing.hpp"
#include "dartwright/drawing/svg_writer.hpp"
#include "dartwright/drawing/table_look.hpp"
#include "dartwright/drawing/text_box.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/geometry/closest.hpp"
#include "dartwright/geometry/predicates.hpp"
#include "dartwright/pages/print_pages.hpp"
#include "dartwright/pages/printed_piece.hpp"
#include "dartwright/pages/sewing_plan.hpp"
#include "dartwright/pages/sewing_sheet.hpp"
#include "dartwright/pattern/dart.hpp"
#include "drawing/svg_reading.hpp"
#include "geometry/length_oracle.hpp"
#include "support/evenly.hpp"
#include "support/generated_half.hpp"

namespace dartwright {
namespace {

using namespace testing_svg;

Pattern fixture(const std::string& name) {
    return read_pattern_file(std::string(DARTWRIGHT_SOURCE_DIR) + "/fixtures/" + name);
}

double length_by_quadrature(const Curve& curve) {
    if (const Line* line = std::get_if<Line>(&curve))
        return std::hypot(line->b.x - line->a.x, line->b.y - line->a.y);
    return static_cast<double>(length_by_oracle(std::get<Cubic>(curve)));
}

double item_by_quadrature(const Outline& outline, std::size_t item) {
    double sum = 0;
    for (const Curve& curve : curves_of_item(outline, item)) sum += length_by_quadrature(curve);
    return sum;
}

/// A length as a ruler in cm has it, by the C library.
std::string on_ruler(double mm) {
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%.1f", mm / 10);
    return text.data();
}
std::string hundredths(double mm) {
    std::array<char, 40> text{};
    std::snprintf(text.data(), text.size(), "%.2f", mm / 10);
    return text.data();
}

/// Too near to where the next figure begins for two ways of measuring to agree on it.
bool is_between_figures(double mm, double step_mm) {
    const double steps = mm / step_mm - 0.5;
    return std::abs(steps - std::round(steps)) * step_mm < 1e-6;
}

void collect_words(const DrawnGroup& group, std::vector<std::string>& words) {
    for (const DrawnItem& item : group.items)
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) words.push_back(text->words);
    for (const DrawnGroup& inner : group.groups) collect_words(inner, words);
}

void collect_texts(const DrawnGroup& group, std::vector<DrawnText>& texts) {
    for (const DrawnItem& item : group.items)
        if (const DrawnText* text = std::get_if<DrawnText>(&item)) texts.push_back(*text);
    for (const DrawnGroup& inner : group.groups) collect_texts(inner, texts);
}

/// Lines of a block follow each other, so that what was wrapped is whole again.
std::string words_of_group(const DrawnGroup& group) {
    std::vector<std::string> words;
    collect_words(group, words);
    std::string joined;
    for (const std::string& each : words) joined += each + " ";
    return joined;
}

std::size_t times_in(const std::string& words, const std::string& wanted) {
    std::size_t count = 0;
    for (std::size_t at = words.find(wanted); at != std::string::npos; at = words.find(wanted, at + 1))
        ++count;
    return count;
}

/// Every cell and paragraph of a document, one a line.
std::string lines_of(const Document& document) {
    std::string lines;
    for (const DocumentBlock& block : document.blocks) {
        if (const auto* paragraph = std::get_if<ParagraphBlock>(&block)) lines += paragraph->words + "\n";
        if (const auto* list = std::get_if<ListBlock>(&block))
            for (const std::string& item : list->items) lines += item + "\n";
        if (const auto* table = std::get_if<TableBlock>(&block))
            for (const auto& row : table->rows)
                for (const std::string& cell : row) lines += cell + "\n";
    }
    return lines;
}

CuttingPiece cut_of(const Pattern& pattern, const Piece& piece) {
    CuttingRequest request = cutting_request(pattern, piece);
    request.undecided_mm = 0;
    return cutting_piece(piece, request, marking_request(pattern));
}

std::string words_on_cut(const Pattern& pattern, const Piece& piece) {
    const CuttingLabel label = label_of_piece({pattern.name, "", "", pattern.unit}, pattern, piece.name);
    return words_of_group(draw_cutting_piece(cut_of(pattern, piece), label));
}

TEST(taken_in, gathers_are_drawn_and_written_at_their_place) {
    CloseGathersRequest request{"front", "waist dart"};
    request.span_mm = 50;
    const Pattern pattern = close_as_gathers(fixture("blocks/close-fitting.json"), request).pattern;
    const Piece& front = pattern.pieces[0];
    std::size_t item = 0;
    while (!front.outline.items[item].as_edge() || front.outline.items[item].as_edge()->fullness == 0) ++item;
    const double flat = item_by_quadrature(front.outline, item);
    const std::string words = "gather " + on_ruler(flat) + " to 10.0 cm between the notches";
    const pugi::xml_document svg = parsed(to_svg(draw_pattern(pattern, {})));
    std::vector<std::string> found;
    for (const auto& text : svg.select_nodes("//text")) found.push_back(text.node().text().get());
    EXPECT_EQ(std::count(found.begin(), found.end(), words), 1) << words;
    EXPECT_EQ(std::count(found.begin(), found.end(), "gather here"), 1) << "in the legend";
    EXPECT_EQ(times_in(words_on_cut(pattern, front), words), 1u);
    // The wave lies inside the stitching line along the whole stretch, and touches neither it nor its ends'
    // far side.
    const DrawnGroup drawn = draw_cutting_piece(cut_of(pattern, front), {});
    const auto layer = std::find_if(drawn.groups.begin(), drawn.groups.end(),
                                    [](const DrawnGroup& group) { return group.name == "fullness"; });
    ASSERT_NE(layer, drawn.groups.end());
    const DrawnPath& wave = std::get<DrawnPath>(layer->items.at(0));
    const auto inside = flat_outline(front.outline, DartsDrawn::to_points, 0.01).points;
    const std::vector<Curve> edge = curves_of_item(front.outline, item);
    ASSERT_EQ(edge.size(), 1u);
    for (const Curve& curve : wave.curves) {
        for (const double t : {0.0, 0.25, 0.5, 0.75, 1.0}) {
            const Point p = point_at(curve, t);
            EXPECT_EQ(where_in_polygon(inside, p), Where::inside);
            const double off = closest_point(edge[0], p).distance;
            EXPECT_GT(off, 2);
            EXPECT_LT(off, 6);
        }
    }
    EXPECT_NEAR(distance(start_of(wave.curves.front()), start_of(edge[0])), 3.6, 0.1);
    EXPECT_NEAR(distance(end_of(wave.curves.back()), end_of(edge[0])), 3.6, 0.1);
}

TEST(taken_in, ease_that_a_dart_was_closed_to_is_on_the_sheet) {
    CloseGathersRequest request{"back", "shoulder dart", TakenIn::ease};
    const Pattern pattern = close_as_gathers(fixture("blocks/close-fitting.json"), request).pattern;
    const Piece& back = pattern.pieces[1];
    double fullness = 0;
    for (const OutlineItem& item : back.outline.items)
        if (item.as_edge()) fullness += item.as_edge()->fullness;
    EXPECT_NEAR(fullness, 10, 1) << "about the dart's mouth of 1 cm";
    const std::string figures = "ease in " + hundredths(fullness) + " cm";
    const std::string sheet = lines_of(sewing_sheet(pattern, {}));
    EXPECT_EQ(times_in(sheet, figures + "\n"), 1u) << sheet;
    EXPECT_EQ(times_in(sheet, "\nA, as above\n"), 1u) << "in the row of the shoulder seam: " << sheet;
    EXPECT_EQ(times_in(words_on_cut(pattern, back), figures), 1u) << words_on_cut(pattern, back);
}

TEST(taken_in, is_listed_on_the_cover) {
    Pattern pattern = close_as_gathers(fixture("blocks/close-fitting.json"), {"front", "waist dart"}).pattern;
    pattern = close_as_tuck(pattern, {"back", "waist dart", 60}).pattern;
    std::vector<PrintedPiece> pieces;
    for (const Piece& piece : pattern.pieces)
        pieces.push_back(printed_piece(piece, pattern, {pattern.name, "", "", pattern.unit}));
    for (const Paper& paper : papers()) {
        PrintRequest request;
        request.paper = paper;
        request.title = pattern.name;
        for (const bool is_landscape : {false, true}) {
            request.is_landscape = is_landscape;
            request.margin_mm = default_margin_mm;
            const PrintResult result = print_pages(pieces, request);
            if (!result.has_cover) continue;
            const Drawing& cover = result.pages.front();
            std::string words;
            for (const DrawnGroup& group : cover.groups) {
                words += words_of_group(group);
                const auto box = bounds(group);
                ASSERT_TRUE(box);
                EXPECT_GE(box->low.y, 9) << paper.name << ' ' << group.name;
                EXPECT_LE(box->high.x, cover.width_mm - 9) << paper.name << ' ' << group.name;
            }
            EXPECT_EQ(times_in(words, "front, waist: gather "), 1u) << words;
            EXPECT_EQ(times_in(words, "back, waist dart: a tuck, stitched 6.0 cm"), 1u) << words;
            EXPECT_EQ(times_in(words, "at full scale follow"), 1u) << words;
        }
    }
}

// At the widest margin that is allowed, too, with the squares whole.
TEST(cover, keeps_to_its_margins) {
    const Pattern pattern =
        close_as_gathers(fixture("blocks/close-fitting.json"), {"front", "waist dart"}).pattern;
    std::vector<PrintedPiece> pieces;
    for (const Piece& piece : pattern.pieces)
        pieces.push_back(printed_piece(piece, pattern, {pattern.name, "", "", pattern.unit}));
    int covers = 0;
    for (const Paper& paper : papers()) {
        PrintRequest request;
        request.paper = paper;
        request.title =
            "a pattern whose name is as long as names of patterns with three sizes and a date get to be";
        for (const bool is_landscape : {false, true}) {
            request.is_landscape = is_landscape;
            const double widest = widest_margin(paper, is_landscape);
            for (const double margin : {0.0, widest / 2, widest}) {
                request.margin_mm = margin;
                request.overlap_mm = std::min(default_overlap_mm, widest_overlap(request));
                const PrintResult result = print_pages(pieces, request);
                if (!result.has_cover) continue;
                ++covers;
                const Drawing& cover = result.pages.front();
                for (const DrawnGroup& group : cover.groups) {
                    const Box box = bounds(group).value();
                    EXPECT_GE(box.low.y, margin - 0.1) << paper.name << ' ' << margin << ' ' << group.name;
                    EXPECT_GE(box.low.x, margin - 0.1) << paper.name << ' ' << margin << ' ' << group.name;
                    EXPECT_LE(box.high.x, cover.width_mm - margin + 0.1)
                        << paper.name << ' ' << margin << ' ' << group.name;
                    EXPECT_LE(box.high.y, cover.height_mm - margin + 0.1)
                        << paper.name << ' ' << margin << ' ' << group.name;
                }
            }
        }
    }
    EXPECT_EQ(covers, 24);
}

TEST(taken_in, tucks_are_written_as_that) {
    const Pattern pattern =
        close_as_tuck(fixture("blocks/close-fitting.json"), {"back", "waist dart", 60}).pattern;
    EXPECT_EQ(times_in(words_on_cut(pattern, pattern.pieces[1]), "tuck 3.5 cm wide, stitched 6.0 cm"), 1u);
    const Drawing drawing = draw_cutting_pieces(pattern);
    std::string words;
    for (const DrawnGroup& group : drawing.groups) words += words_of_group(group);
    EXPECT_EQ(times_in(words, "bars on a tuck's legs"), 1u);
    EXPECT_EQ(times_in(words, "gather"), 0u);
}

// A dashed line beyond the bars, or a dot at the point, would be stitched by whoever sees it.
TEST(taken_in, a_tuck_on_paper_is_drawn_as_far_as_it_is_stitched) {
    constexpr double stitched_mm = 60;
    const Pattern pattern =
        close_as_tuck(fixture("blocks/close-fitting.json"), {"back", "waist dart", stitched_mm}).pattern;
    const Piece& piece = pattern.pieces[1];
    const std::optional<std::size_t> item = find_dart(piece, "waist dart");
    ASSERT_TRUE(item);
    const DartItem& dart = *piece.outline.items[*item].as_dart();
    const DrawnGroup drawn = draw_cutting_piece(cut_of(pattern, piece), {});
    double sewn_mm = 0;
    for (const DrawnGroup& layer : drawn.groups) {
        if (layer.name == "darts") {
            for (const DrawnItem& each : layer.items) {
                const DrawnPath& path = std::get<DrawnPath>(each);
                const bool is_dot = path.fill == look::ink;
                EXPECT_FALSE(is_dot && distance(start_of(path.curves.front()), dart.point) < 3);
            }
        }
        if (layer.name != "stitching line") continue;
        EXPECT_EQ(layer.items.size(), 1u);
        for (const DrawnItem& path : layer.items)
            for (const Curve& curve : std::get<DrawnPath>(path).curves)
                sewn_mm += length_by_quadrature(curve);
    }
    double all_mm = 0;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i)
        all_mm += i == *item ? 2 * stitched_mm
                  : piece.outline.items[i].as_dart()
                      ? length_by_quadrature(legs_of_item(piece.outline, i).to_point) +
                            length_by_quadrature(legs_of_item(piece.outline, i).from_point)
                      : item_by_quadrature(piece.outline, i);
    EXPECT_NEAR(sewn_mm, all_mm, 1e-6);
}

TEST(taken_in, pieces_are_numbered_as_in_the_pattern) {
    const Pattern pattern = fixture("blocks/close-fitting.json");
    EXPECT_EQ(times_in(words_on_cut(pattern, pattern.pieces[1]), "piece 2 of 2"), 1u);
    const PrintedPiece printed = printed_piece(pattern.pieces[1], pattern, {});
    EXPECT_EQ(times_in(words_of_group(printed.drawing), "piece 2 of 2"), 1u);
}

// Outline on a lattice: in the front the side goes from (200, 0) to (200, 100).
TEST(sheet_of_a_fault, does_not_call_it_ease) {
    const Pattern pattern = fixture("faults/seam-length.json");
    const std::string sheet = lines_of(sewing_sheet(pattern, {}));
    EXPECT_EQ(times_in(sheet, "a fault and not ease: skirt back is 0.30 cm too long"), 1u) << sheet;
    EXPECT_EQ(times_in(sheet, "of skirt back between"), 0u);
    const std::string good = lines_of(sewing_sheet(fixture("faults/seam-length.true.json"), {}));
    EXPECT_EQ(times_in(good, "a fault"), 0u);
}

TEST(sheet_of_seams, names_the_end_by_the_edge_beside_it) {
    const std::string sheet = lines_of(sewing_sheet(fixture("workshop/chorus-bodice.json"), {}));
    EXPECT_EQ(times_in(sheet,
                       "0.30 cm of back between the neck end and the first notch; 0.30 cm of back between "
                       "the first notch and the armhole end"),
              1u)
        << sheet;
    EXPECT_EQ(times_in(sheet, "the start"), 0u);
}

TEST(sheet_of_seams, speaks_of_no_ease_below_a_millimetre_and_of_none_that_is_not_meant) {
    Pattern pattern = fixture("workshop/chorus-bodice.json");
    const auto shoulder_notch = [](Piece& piece) -> Notch& {
        return *std::find_if(piece.notches.begin(), piece.notches.end(),
                             [](const Notch& notch) { return notch.edge == "shoulder"; });
    };
    // 0.9 mm before the notch, 5.1 mm after it.
    shoulder_notch(pattern.pieces[1]).at = shoulder_notch(pattern.pieces[0]).at + 0.9;
    const std::string sheet = lines_of(sewing_sheet(pattern, {}));
    EXPECT_EQ(times_in(sheet, "between the neck end"), 0u) << sheet;
    EXPECT_EQ(times_in(sheet, "0.51 cm of back between the first notch and the armhole end"), 1u) << sheet;
    for (const SewingPlan& plan : {sewing_plan(pattern)})
        for (const PlannedSeam& seam : plan.seams)
            EXPECT_EQ(seam.eased.empty(), seam.seam != "shoulder") << seam.seam;
}

TEST(sheet_of_seams, counts_the_seams_of_an_opened_piece_once) {
    const Pattern half = fixture("workshop/chorus-bodice.json");
    for (const PlannedSeam& seam : sewing_plan(half).seams)
        EXPECT_EQ(seam.times, seam.seam == "centre back" ? 1 : 2) << seam.seam;
    const Pattern whole = open(half, {"front"}).pattern;
    ASSERT_EQ(whole.seams.size(), 5u);
    for (const PlannedSeam& seam : sewing_plan(whole).seams) EXPECT_EQ(seam.times, 1) << seam.seam;
    // Two bodices: each seam of one comes in both.
    Pattern two = half;
    two.pieces[0].cut->quantity = 2;
    two.pieces[1].cut->quantity = 4;
    for (const PlannedSeam& seam : sewing_plan(two).seams)
        EXPECT_EQ(seam.times, seam.seam == "centre back" ? 2 : 4) << seam.seam;
}

/// Fullness on some edges of a generated half, a tuck or a dart, opened or not.
struct PaperCase {
    Pattern pattern;
};
PaperCase any_paper_case() {
    PaperCase out{testing::any_half()};
    out.pattern.unit = Unit::cm;
    Piece& half = out.pattern.pieces[0];
    for (std::size_t i = 0; i < half.outline.items.size(); ++i) {
        EdgeItem* edge = half.outline.items[i].as_edge();
        if (!edge || edge->edge == "fold" || *testing::evenly(0, 3) == 0) continue;
        edge->fullness = item_by_quadrature(half.outline, i) * testing::real_between(0.002, 0.5);
    }
    // Notches and allowances are along the sewn edge, which is shorter now.
    half.notches.clear();
    half.allowance.clear();
    const std::size_t dart = *find_dart(half, "dart");
    const DartFigures figures = figures_of(half.outline, dart);
    DartItem& item = *half.outline.items[dart].as_dart();
    if (*testing::evenly(0, 3) == 0)
        item.stitched = std::min(figures.leg_a, figures.leg_b) * testing::real_between(0.2, 0.9);
    if (*rc::gen::arbitrary<bool>()) return out;
    OpenRequest request{"half"};
    if (*rc::gen::arbitrary<bool>()) request.worn = *rc::gen::arbitrary<bool>() ? Worn::front : Worn::back;
    try {
        out.pattern = open(out.pattern, request).pattern;
    } catch (const Impossible&) {
        RC_DISCARD("the dart's wedge leaves the generated half");
    }
    return out;
}

/// The items of fullness that lie beside each other with one share of it, and so are one stretch.
struct ExpectedStretch {
    double flat_mm = 0;
    double fullness_mm = 0;
    double share = 0;
    std::size_t last = 0;
};
std::vector<ExpectedStretch> expected_stretches(const Piece& piece) {
    std::vector<ExpectedStretch> found;
    const auto& items = piece.outline.items;
    for (std::size_t i = 0; i < items.size(); ++i) {
        const EdgeItem* edge = items[i].as_edge();
        if (!edge || edge->fullness == 0) continue;
        const double flat = item_by_quadrature(piece.outline, i);
        const double share = edge->fullness / flat;
        const bool goes_on = !found.empty() && found.back().last + 1 == i &&
                             items[i - 1].as_edge()->edge == edge->edge &&
                             std::abs(found.back().share - share) < 1e-9;
        if (!goes_on) found.push_back({0, 0, share, i});
        found.back().flat_mm += flat;
        found.back().fullness_mm += edge->fullness;
        found.back().last = i;
    }
    return found;
}

RC_GTEST_PROP(OnPaper, EachFullnessOfAMillimetreIsSaidOnceOnTheSheetWithItsLength, ()) {
    const PaperCase paper = any_paper_case();
    std::map<std::string, std::size_t> wanted;
    std::size_t count = 0;
    for (const ExpectedStretch& each : expected_stretches(paper.pattern.pieces[0])) {
        const double sewn = each.flat_mm - each.fullness_mm;
        RC_PRE(std::abs(each.fullness_mm - 1) > 1e-6 && std::abs(each.fullness_mm - 0.15 * sewn) > 1e-6);
        RC_PRE(!is_between_figures(each.flat_mm, 1) && !is_between_figures(sewn, 1) &&
               !is_between_figures(each.fullness_mm, 0.1));
        if (each.fullness_mm < 1) continue;
        ++count;
        ++wanted[each.fullness_mm > 0.15 * sewn
                     ? "gather " + on_ruler(each.flat_mm) + " to " + on_ruler(sewn) + " cm"
                     : "ease in " + hundredths(each.fullness_mm) + " cm"];
    }
    RC_TAG(count);
    const std::string sheet = lines_of(sewing_sheet(paper.pattern, {}));
    for (const auto& [figures, times] : wanted) {
        if (times_in(sheet, "\n" + figures + "\n") != times) RC_LOG() << figures << "\n" << sheet;
        RC_ASSERT(times_in(sheet, "\n" + figures + "\n") == times);
    }
    RC_ASSERT(times_in(sheet, "\ngather ") + times_in(sheet, "\nease in ") == count);
}

RC_GTEST_PROP(OnPaper, EachDartOfAPrintedPieceHasItsPressSideItsWidthAndItsLength, ()) {
    const PaperCase paper = any_paper_case();
    const Piece& piece = paper.pattern.pieces[0];
    const bool is_opened = piece.cut->fold.empty();
    std::string words;
    DrawnGroup drawing;
    try {
        drawing = draw_cutting_piece(cut_of(paper.pattern, piece),
                                     label_of_piece({"", "", "", Unit::cm}, paper.pattern, piece.name));
        words = words_of_group(drawing);
    } catch (const Impossible&) {
        RC_DISCARD("no cutting line");
    }
    std::size_t arrows = 0;
    for (const DrawnGroup& layer : drawing.groups)
        if (layer.name == "press") arrows = layer.items.size() / 2;
    std::map<std::string, std::size_t> wanted;
    std::size_t darts = 0;
    for (std::size_t i = 0; i < piece.outline.items.size(); ++i) {
        const DartItem* dart = piece.outline.items[i].as_dart();
        if (!dart) continue;
        ++darts;
        const Point a = start_of_item(piece.outline, i);
        const Point b = piece.outline.items[i].to;
        const double wide = std::hypot(b.x - a.x, b.y - a.y);
        const double leg = (distance(a, dart->point) + distance(dart->point, b)) / 2;
        const double long_mm = dart->stitched.value_or(leg);
        RC_PRE(!is_between_figures(wide, 1) && !is_between_figures(long_mm, 1));
        std::string line = dart->name + " ";
        line += dart->stitched ? "tuck " + on_ruler(wide) + " cm wide, stitched " + on_ruler(long_mm) + " cm "
                               : on_ruler(wide) + " cm wide, " + on_ruler(long_mm) + " cm long ";
        // Half a piece is pressed as its file says; in the whole what was beyond the fold is the fold's line.
        const bool is_across = is_opened && dart->press.substr(0, 4) != dart->name.substr(0, 4);
        line += "press to " + (is_across ? std::string("fold") : dart->press);
        ++wanted[line];
    }
    RC_ASSERT(darts == (is_opened ? 2u : 1u));
    RC_ASSERT(arrows <= darts);
    for (const auto& [line, times] : wanted) {
        if (times_in(words, line) != times) RC_LOG() << line << "\n" << words;
        RC_ASSERT(times_in(words, line) == times);
    }
    const std::string said = piece.worn ? "left and right are the wearer's" : "left and right as drawn";
    // Where a label is wrapped its lines still follow each other.
    RC_ASSERT(times_in(words, said) == (is_opened ? 1u : 0u));
}

// On the back of the block the words are longer than the shoulder that they belong to.
TEST(taken_in, stands_inside_the_piece_in_lines_of_full_size) {
    const Pattern pattern = fixture("blocks/close-fitting.json");
    const Pattern eased = close_as_gathers(pattern, {"back", "shoulder dart", TakenIn::ease}).pattern;
    const Piece& back = eased.pieces[1];
    const auto outline = flat_outline(back.outline, DartsDrawn::to_points, 0.01).points;
    const auto lines_on = [&](const DrawnGroup& group) {
        std::vector<DrawnText> texts;
        collect_texts(group, texts);
        const auto first = std::find_if(texts.begin(), texts.end(), [](const DrawnText& text) {
            return text.words.starts_with("ease in 0.96 cm between");
        });
        EXPECT_NE(first, texts.end()) << words_of_group(group);
        std::string words;
        for (auto at = first; at != texts.end() && !words.ends_with("armhole end "); ++at) {
            words += at->words + " ";
            EXPECT_EQ(at->size_mm, 5.5) << at->words;
            EXPECT_EQ(where_in_polygon(outline, box_of(*at).centre), Where::inside) << at->words;
        }
        EXPECT_EQ(
            words,
            "ease in 0.96 cm between the first notch and the third notch, counted from the armhole end ");
    };
    const CuttingLabel label{eased.name, "", "", eased.unit};
    lines_on(draw_cutting_piece(cut_of(eased, back), label));
    lines_on(printed_piece(back, eased, label).drawing);
}

TEST(cutting_label, of_a_waistband_stands_on_it) {
    Piece band;
    band.name = "waistband";
    band.cut = Cut{1, "centre front", false, {}, ""};
    band.outline.items = {{EdgeItem{"lower", StraightShape{}, 0}, {180, 0}},
                          {EdgeItem{"side end", StraightShape{}, 0}, {180, 40}},
                          {EdgeItem{"upper", StraightShape{}, 0}, {0, 40}},
                          {EdgeItem{"centre front", StraightShape{}, 0}, {0, 0}}};
    band.grain = Grain{{10, 10}, {100, 10}, ""};
    band.allowance = {{"lower", 10.0}, {"side end", 10.0}, {"upper", 10.0}};
    Pattern pattern;
    pattern.name = "gathered skirt";
    pattern.unit = Unit::cm;
    pattern.pieces = {band};
    const CuttingPiece cut = cut_of(pattern, band);
    const DrawnGroup drawn =
        draw_cutting_piece(cut, label_of_piece({pattern.name, "", "", pattern.unit}, pattern, band.name));
    std::vector<DrawnText> texts;
    collect_texts(drawn, texts);
    for (const DrawnText& text : texts)
        EXPECT_EQ(where_in_polygon(cut.line.points, box_of(text).centre), Where::inside) << text.words;
    const std::string words = words_of_group(drawn);
    for (const char* wanted :
         {"waistband (gathered skirt)", "piece 1 of 1; cut 1 on the fold; allowance 1\u00a0cm all round",
          "place on the fold", "grain"})
        EXPECT_EQ(times_in(words, wanted), 1u) << wanted << ": " << words;
}

std::string with_plain_spaces(std::string words) {
    const std::string bound = "\u00a0";
    for (std::size_t at = words.find(bound); at != std::string::npos; at = words.find(bound, at))
        words.replace(at, bound.size(), " ");
    return words;
}

// Under `allowance: right side, left` a line `side 1.8 cm` speaks of another edge.
TEST(cutting_label, parts_no_edge_s_name) {
    std::size_t named = 0;
    for (const char* name : {"workshop/chorus-bodice.json", "workshop/chorus-bodice-inch.json",
                             "faults/seam-allowance.flat-felled.true.json", "blocks/close-fitting.json"}) {
        Pattern pattern = fixture(name);
        for (std::size_t i = 0; i < pattern.pieces.size(); ++i)
            if (pattern.pieces[i].cut && !pattern.pieces[i].cut->fold.empty())
                pattern = open(pattern, {pattern.pieces[i].name}).pattern;
        for (Piece& piece : pattern.pieces) {
            piece.allowance.clear();
            double width = 10;  // one for each edge, so that each is named
            for (const auto& run : runs_of(piece.outline))
                if (!is_fold_edge(piece, run.edge)) piece.allowance.emplace_back(run.edge, width += 0.5);
            std::vector<std::string> lines;
            collect_words(draw_cutting_piece(cut_of(pattern, piece), {pattern.name, "", "", pattern.unit}),
                          lines);
            for (const auto& [edge, allowance] : piece.allowance) {
                EXPECT_TRUE(std::any_of(lines.begin(), lines.end(),
                                        [&, whole = edge](const std::string& line) {
                                            return with_plain_spaces(line).find(whole) != std::string::npos;
                                        }))
                    << name << ": " << edge;
                ++named;
            }
        }
    }
    EXPECT_GE(named, 30u);
}

TEST(cutting_label, says_that_the_widths_of_a_flat_felled_seam_are_meant) {
    const Pattern pattern = fixture("faults/seam-allowance.flat-felled.true.json");
    EXPECT_EQ(times_in(with_plain_spaces(words_on_cut(pattern, pattern.pieces[0])),
                       "side: 1.8 cm on skirt back, as meant"),
              1u);
    EXPECT_EQ(times_in(with_plain_spaces(words_on_cut(pattern, pattern.pieces[1])),
                       "side: 0.6 cm on skirt front, as meant"),
              1u);
    const Pattern opened = open(pattern, {"skirt back"}).pattern;
    EXPECT_EQ(times_in(with_plain_spaces(words_on_cut(opened, opened.pieces[1])),
                       "side: 0.6 cm on skirt front, as meant"),
              1u);
    // Nothing of it where the widths are the same, are not decided, or are not meant to differ.
    Pattern same = pattern;
    same.pieces[0].allowance = {{"side", 18.0}};
    Pattern open_question = pattern;
    open_question.pieces[0].allowance = {};
    Pattern other = pattern;
    other.seams[0].allowances_differ = false;
    for (const Pattern& each : {same, open_question, other})
        EXPECT_EQ(times_in(words_on_cut(each, each.pieces[1]), "as meant"), 0u);
}

TEST(cutting_legend, explains_only_lines_that_are_there) {
    const auto legend_of = [](const std::string& name) {
        const Drawing drawing = draw_cutting_pieces(fixture(name));
        const auto legend = std::find_if(drawing.groups.begin(), drawing.groups.end(),
                                         [](const DrawnGroup& group) { return group.name == "legend"; });
        EXPECT_NE(legend, drawing.groups.end());
        return words_of_group(*legend);
    };
    const std::string bodice = legend_of("workshop/chorus-bodice.json");
    const std::string circle = legend_of("faults/fold-corner.second.true.json");
    for (const char* words : {"dart's centre line", "dart legs", "marked line"}) {
        EXPECT_EQ(times_in(bodice, words), 1u) << words;
        EXPECT_EQ(times_in(circle, words), 0u) << words;
    }
    EXPECT_EQ(times_in(circle, "stitching line"), 1u);
}

TEST(cover, names_every_page_of_a_piece) {
    const Pattern pattern = fixture("faults/fold-corner.second.true.json");
    PrintRequest request;
    request.paper = papers().front();
    request.title = pattern.name;
    request.margin_mm = default_margin_mm;
    request.overlap_mm = default_overlap_mm;
    const PrintResult result = print_pages(
        {printed_piece(pattern.pieces[0], pattern, {pattern.name, "", "", pattern.unit})}, request);
    ASSERT_TRUE(result.has_cover);
    std::string wanted = "circle: ";
    for (const Tile tile : result.sheet.tiles)
        wanted += (wanted.ends_with(": ") ? "" : ", ") + label_of(tile);
    EXPECT_GT(result.sheet.tiles.size(), 9u);
    std::string words;
    for (const DrawnGroup& group : result.pages.front().groups) words += words_of_group(group);
    EXPECT_EQ(times_in(words, wanted), 1u) << words;
}

}  // namespace
}  // namespace dartwright
