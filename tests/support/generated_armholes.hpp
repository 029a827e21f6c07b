#pragma once

// Generated bodices with a set-in sleeve: front and back of which every corner at a seam has an angle that
// was chosen, a sleeve of one part or of two with ease in its cap, a neck that is bare or has facings of its
// own. What is to be said of each corner follows from the choice.

#include "dartwright/checks/finding.hpp"
#include "support/evenly.hpp"
#include "support/generated_pieces.hpp"

namespace dartwright::testing {

/// A corner of a seam as it was chosen.
struct ChosenCorner {
    std::string seam;
    std::string piece;  ///< on the seam's first side
    Point at;           ///< on that piece
    double sum_deg = 0;
    Severity severity = Severity::fault;  ///< where it is not 180
};
struct GeneratedArmhole {
    Pattern pattern;
    std::vector<ChosenCorner> corners;
};

/// A piece whose named edges lie between corners, anticlockwise. Between two straight edges a bent one leaves
/// and comes in by the inside angles asked for; one without an angle goes the straight way there.
struct BentEdge {
    std::string edge;
    Point to;
    std::optional<double> start_deg = {};
    std::optional<double> end_deg = {};
    bool is_bent() const { return start_deg || end_deg; }
};

inline Vector turned(Vector v, double degrees_) {
    return apply(turn_by(radians(degrees_)), v);
}

inline Piece piece_of(const std::string& name, const std::vector<BentEdge>& edges) {
    Piece piece;
    piece.name = name;
    piece.cut = Cut{2, "", false, {}};
    piece.outline.start = edges.back().to;
    const auto from = [&](std::size_t i) { return edges[(i + edges.size() - 1) % edges.size()].to; };
    const auto way = [&](std::size_t i) { return unit(edges[i].to - from(i)); };
    for (std::size_t i = 0; i < edges.size(); ++i) {
        const BentEdge& edge = edges[i];
        OutlineItem item{EdgeItem{edge.edge, StraightShape{}, 0}, edge.to};
        if (edge.is_bent()) {
            const double handle = distance(from(i), edge.to) / 3;
            const std::size_t last = (i + edges.size() - 1) % edges.size();
            const std::size_t next = (i + 1) % edges.size();
            // An inside angle of 180 degrees goes straight on; a smaller one turns left by the rest.
            const Vector out = edge.start_deg ? turned(way(last), 180 - *edge.start_deg) : way(i);
            const Vector in = edge.end_deg ? turned(way(next), *edge.end_deg - 180) : way(i);
            item.as_edge()->shape = CubicShape{{from(i) + handle * out, edge.to - handle * in}};
        }
        piece.outline.items.push_back(item);
    }
    return piece;
}

struct BodiceAngles {
    double hem = 0;
    double underarm = 0;
    double shoulder = 0;
    double neck = 0;
};
struct BodiceSize {
    double width = 0;
    double height = 0;
    double across = 0;
    double lean = 0;
};
/// Sides and shoulders of one length on both, whatever their width.
inline Piece any_bodice(const std::string& name, const BodiceAngles& angles, const BodiceSize& size) {
    const double neck = size.across - 110;
    return piece_of(name, {{"hem", {size.width, 0}, {}, angles.hem},
                           {"side", {size.width + size.lean, size.height}},
                           {"armhole", {size.across, size.height + 180}, angles.underarm, angles.shoulder},
                           {"shoulder", {neck, size.height + 215}},
                           {"neck", {0, size.height + 140}, angles.neck, {}},
                           {"centre", {0, 0}}});
}

inline double run_length_of(const Piece& piece, const std::string& edge) {
    return find_run(runs_of(piece.outline), edge)->length;
}

/// An angle and what makes 180 with it, or misses that by more than any tolerance.
struct AnglePair {
    double first = 0;
    double second = 0;
    double sum() const { return first + second; }
};
inline AnglePair any_angles(bool is_sound, double low = 75, double high = 105) {
    const double first = real_between(low, high);
    double off = 0;
    if (!is_sound && *testing::evenly(0, 3) == 0)
        off = real_between(3, 18) * (*rc::gen::arbitrary<bool>() ? 1 : -1);
    return {first, 180 - first + off};
}

inline Seam seam_between(const std::string& name, const SeamSide& first, const SeamSide& second) {
    Seam seam;
    seam.name = name;
    seam.joins = {first, second};
    return seam;
}

/// Corners that are chosen well: none is a fault.
inline GeneratedArmhole any_armhole(bool is_sound) {
    GeneratedArmhole out;
    Pattern& pattern = out.pattern;
    pattern.name = "bodice";
    const AnglePair hem = any_angles(is_sound);
    const AnglePair underarm = any_angles(is_sound);
    const AnglePair shoulder = any_angles(is_sound);
    const AnglePair neck = any_angles(is_sound);
    const AnglePair cap = any_angles(is_sound, 60, 85);
    const AnglePair wrist = any_angles(is_sound);
    BodiceSize size{real_between(200, 260), real_between(180, 260), real_between(150, 190), 0};
    size.lean = real_between(-10, 20);
    const Piece front = any_bodice("front", {hem.first, underarm.first, shoulder.first, neck.first}, size);
    size.width += real_between(-20, 20);
    size.across += real_between(-10, 10);
    const Piece back = any_bodice("back", {hem.second, underarm.second, shoulder.second, neck.second}, size);
    pattern.pieces = {front, back};
    const auto corner = [](const Piece& piece, const std::string& edge) {
        for (const OutlineItem& item : piece.outline.items)
            if (item.as_edge()->edge == edge) return item.to;
        throw std::logic_error(edge);
    };
    const auto add = [&](const std::string& seam, const std::string& piece, Point at, double sum,
                         Severity severity) {
        out.corners.push_back({seam, piece, at, sum, severity});
    };
    pattern.seams = {
        seam_between("side", {{"front", "side", "hem", false}}, {{"back", "side", "hem", false}}),
        seam_between("shoulder", {{"front", "shoulder", "armhole", false}},
                     {{"back", "shoulder", "armhole", false}})};
    add("side", "front", corner(front, "hem"), hem.sum(), Severity::fault);
    // The armholes are parts of one side of the seam to the sleeve.
    add("side", "front", corner(front, "side"), underarm.sum(), Severity::fault);
    add("shoulder", "front", corner(front, "armhole"), shoulder.sum(), Severity::fault);

    // The cap is in two: of one sleeve, or of its upper and under part, which are sewn together at the top
    // too.
    const bool is_of_two_parts = *rc::gen::arbitrary<bool>();
    const double half = real_between(150, 190);
    const double long_mm = real_between(120, 420);
    const double high = real_between(90, 140);
    SeamSide cap_side;
    if (is_of_two_parts) {
        const AnglePair top = any_angles(is_sound);
        const AnglePair foot = any_angles(is_sound);
        const Piece upper = piece_of("upper sleeve", {{"wrist", {half, 0}, foot.first, wrist.first},
                                                      {"underarm", {half, long_mm}},
                                                      {"cap", {0, long_mm + high}, cap.first, top.first},
                                                      {"middle", {0, 0}}});
        const Piece under = piece_of("under sleeve", {{"wrist", {half, 0}, wrist.second, foot.second},
                                                      {"middle", {half, long_mm + high}},
                                                      {"cap", {0, long_mm}, top.second, cap.second},
                                                      {"underarm", {0, 0}}});
        pattern.pieces.push_back(upper);
        pattern.pieces.push_back(under);
        pattern.seams.push_back(seam_between("underarm", {{"upper sleeve", "underarm", "wrist", false}},
                                             {{"under sleeve", "underarm", "wrist", false}}));
        pattern.seams.push_back(seam_between("middle", {{"upper sleeve", "middle", "wrist", false}},
                                             {{"under sleeve", "middle", "wrist", false}}));
        cap_side = {{"upper sleeve", "cap", "underarm", false}, {"under sleeve", "cap", "middle", false}};
        add("underarm", "upper sleeve", corner(upper, "wrist"), wrist.sum(), Severity::fault);
        add("underarm", "upper sleeve", corner(upper, "underarm"), cap.sum(), Severity::fault);
        add("middle", "upper sleeve", {0, 0}, foot.sum(), Severity::fault);
        add("middle", "upper sleeve", corner(upper, "cap"), top.sum(), Severity::fault);
    } else {
        const double lean = real_between(0, 30);
        const Point top{half, long_mm + high};
        // In two items, level at the top.
        Piece sleeve = piece_of("sleeve", {{"wrist", {2 * half, 0}, wrist.second, wrist.first},
                                           {"front underarm", {2 * half + lean, long_mm}},
                                           {"cap", {-lean, long_mm}, cap.first, cap.second},
                                           {"back underarm", {0, 0}}});
        OutlineItem& first = sleeve.outline.items[2];
        const auto controls = std::get<CubicShape>(first.as_edge()->shape).controls;
        OutlineItem second = first;
        first.to = top;
        first.as_edge()->shape = CubicShape{{controls[0], top + Vector{half / 3, 0}}};
        second.as_edge()->shape = CubicShape{{top - Vector{half / 3, 0}, controls[1]}};
        sleeve.outline.items.insert(sleeve.outline.items.begin() + 3, second);
        pattern.pieces.push_back(sleeve);
        pattern.seams.push_back(seam_between("underarm", {{"sleeve", "front underarm", "wrist", false}},
                                             {{"sleeve", "back underarm", "wrist", false}}));
        cap_side = {{"sleeve", "cap", "front underarm", false}};
        add("underarm", "sleeve", corner(sleeve, "wrist"), wrist.sum(), Severity::fault);
        add("underarm", "sleeve", corner(sleeve, "front underarm"), cap.sum(), Severity::fault);
    }
    Seam armhole = seam_between(
        "armhole", {{"front", "armhole", "side", false}, {"back", "armhole", "shoulder", false}}, cap_side);
    double ease = -run_length_of(front, "armhole") - run_length_of(back, "armhole");
    for (const SeamPart& part : cap_side)
        for (const Piece& piece : pattern.pieces)
            if (piece.name == part.piece) ease += run_length_of(piece, part.edge);
    armhole.ease = Ease{ease < 0 ? 1 : 2, std::abs(ease), true};
    pattern.seams.push_back(armhole);
    // Four pieces meet at the underarm.
    add("armhole", "front", corner(front, "side"), underarm.first + cap.first, Severity::note);
    add("armhole", "back", corner(back, "side"), underarm.second + cap.second, Severity::note);

    // A neck with facings of its own, front and back, is in two seams; a bare one runs on.
    const bool is_faced = *rc::gen::arbitrary<bool>();
    if (is_faced) {
        for (const Piece& piece : {front, back}) {
            Piece facing = piece;
            facing.name = piece.name + " facing";
            Seam seam = seam_between(piece.name + " neck", {{piece.name, "neck", "shoulder", false}},
                                     {{facing.name, "neck", "shoulder", false}});
            seam.laid = LaidAs::on_each_other;
            pattern.pieces.push_back(facing);
            pattern.seams.push_back(seam);
        }
    }
    const bool is_said_smooth = is_faced && *rc::gen::arbitrary<bool>();
    if (is_said_smooth) pattern.seams[1].ends = {{"neck", CornerIs::smooth}};
    add("shoulder", "front", corner(front, "shoulder"), neck.sum(),
        is_faced && !is_said_smooth ? Severity::note : Severity::fault);
    return out;
}

}  // namespace dartwright::testing
