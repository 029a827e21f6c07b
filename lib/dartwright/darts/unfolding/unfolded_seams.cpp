#include "dartwright/darts/unfolding/unfolded_seams.hpp"

#include <algorithm>

#include "dartwright/darts/phrases.hpp"

namespace dartwright {
namespace {

/// A seam as it is, or its mirror image.
enum class SeamImage { same, mirror };

template <class Visit>
void for_each_part(const Seam& seam, const Visit& visit) {
    for (const SeamSide& side : seam.joins) {
        for (const SeamPart& part : side) visit(part);
    }
}

bool has_part(const Seam& seam, const SeamPart& wanted) {
    bool is_found = false;
    for_each_part(seam, [&](const SeamPart& part) {
        is_found = is_found || (part.piece == wanted.piece && part.edge == wanted.edge &&
                                part.mirrored == wanted.mirrored);
    });
    return is_found;
}

class SeamsUnfolded {
  public:
    SeamsUnfolded(const Pattern& pattern, const Unfolding& unfolding) : pattern_(pattern), u_(unfolding) {}

    UnfoldedSeams unfolded() const {
        UnfoldedSeams out;
        for (const Seam& seam : pattern_.seams) {
            if (!is_of_piece(seam)) {
                out.seams.push_back(seam);
                continue;
            }
            refuse_in_fold(seam);
            std::vector<Seam> images{image(seam, SeamImage::same)};
            if (!is_whole_already(seam)) {
                images.push_back(image(seam, SeamImage::mirror));
                images[0].name = fresh_name(Half::drawn, seam.name);
                images[1].name = fresh_name(Half::added, seam.name);
            }
            out.opened.push_back({seam.name, {}});
            for (Seam& each : images) {
                out.opened.back().now.push_back(each.name);
                out.seams.push_back(std::move(each));
            }
        }
        return out;
    }

  private:
    bool is_own(const SeamPart& part) const { return part.piece == u_.half.name; }

    bool is_of_piece(const Seam& seam) const {
        bool is_of = false;
        for_each_part(seam, [&](const SeamPart& part) { is_of = is_of || is_own(part); });
        return is_of;
    }

    void refuse_in_fold(const Seam& seam) const {
        for_each_part(seam, [&](const SeamPart& part) {
            if (!is_own(part) || part.edge != u_.fold) return;
            throw Impossible("the seam " + quoted(seam.name) + " is in the fold",
                             "take the fold or the seam away first");
        });
    }

    // Whether the pattern has the mirror image of each of its own parts in a seam already.
    bool is_whole_already(const Seam& seam) const {
        bool is_whole = true;
        for_each_part(seam, [&](SeamPart part) {
            if (!is_own(part)) return;
            part.mirrored = !part.mirrored;
            is_whole = is_whole && std::any_of(pattern_.seams.begin(), pattern_.seams.end(),
                                               [&part](const Seam& each) { return has_part(each, part); });
        });
        return is_whole;
    }

    SeamPart image(SeamPart part, SeamImage which) const {
        const bool is_mirrored = part.mirrored != (which == SeamImage::mirror);
        if (!is_own(part)) {
            part.mirrored = is_mirrored;
            return part;
        }
        const Half half = is_mirrored ? Half::added : Half::drawn;
        return {part.piece, u_.name(half, part.edge), end_in_whole(u_, half, part.edge, part.from), false};
    }

    Seam image(Seam seam, SeamImage which) const {
        seam.ends = ends_of_image(seam, which);
        for (SeamSide& side : seam.joins) {
            for (SeamPart& part : side) part = image(part, which);
        }
        return seam;
    }

    // Words about a corner name an edge beside one of the parts: of this piece they are said anew, of others
    // they stay.
    std::map<std::string, CornerIs> ends_of_image(const Seam& seam, SeamImage which) const {
        std::map<std::string, CornerIs> ends;
        for (const auto& [name, corner] : seam.ends) {
            for_each_part(seam, [&, &end = name, &is = corner](const SeamPart& part) {
                if (is_own(part)) {
                    const Half half =
                        part.mirrored != (which == SeamImage::mirror) ? Half::added : Half::drawn;
                    const std::string there = end_in_whole(u_, half, part.edge, end);
                    if (!there.empty()) ends.emplace(there, is);
                    return;
                }
                const auto runs = runs_of(piece_named(pattern_, part.piece).outline);
                if (end_named(run_named(runs, part.edge, part.piece), end)) ends.emplace(end, is);
            });
        }
        return ends;
    }

    std::string fresh_name(Half half, const std::string& old) const {
        std::string name = u_.name(half, old);
        const auto is_taken = [&name](const Seam& seam) { return seam.name == name; };
        for (int number = 2; std::any_of(pattern_.seams.begin(), pattern_.seams.end(), is_taken); ++number)
            name = derived_name(u_.side(half) + " ", old, " " + std::to_string(number));
        return name;
    }

    const Pattern& pattern_;
    const Unfolding& u_;
};

}  // namespace

UnfoldedSeams unfolded_seams(const Pattern& pattern, const Unfolding& unfolding) {
    return SeamsUnfolded(pattern, unfolding).unfolded();
}

}  // namespace dartwright
