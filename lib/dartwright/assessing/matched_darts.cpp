#include "dartwright/assessing/matched_darts.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace dartwright {
namespace {

/// A dart within this of where it was asked was meant for there, mm: a hand's slip, not another decision.
constexpr double near_mm = 30;
/// A dart within this of where one was to be closed was not moved, mm.
constexpr double unmoved_mm = 5;

struct StandsAt {
    const std::string& edge;
    double distance_mm = 0;
    double around_mm = 0;
    std::optional<double> to_end_mm = {};
};

struct DartPair {
    double distance_mm = 0;
    std::size_t asked = 0;
    std::size_t drawn = 0;
};

class Matching {
  public:
    Matching(const DartsOfPiece& piece, const std::vector<StandingDart>& drawn)
        : piece_(piece), drawn_(drawn), is_taken_(drawn.size()) {
        out_.asked.resize(piece.asked.size());
        out_.closed.resize(piece.closed.size());
    }

    MatchedDarts matched() {
        match_asked(near_mm, Unmoved::left);
        match_closed(unmoved_mm);
        match_asked(std::numeric_limits<double>::infinity(), Unmoved::taken);
        match_closed(std::numeric_limits<double>::infinity());
        for (std::size_t k = 0; k < drawn_.size(); ++k)
            if (!is_taken_[k]) out_.extra.push_back(k);
        return out_;
    }

  private:
    enum class Unmoved { left, taken };

    // On one edge by the distances along it, so that other edges may have other lengths; from either end to
    // what was closed, since a task that came after may have made the edge longer.
    double apart(const StandsAt& asked, const StandingDart& drawn) const {
        const double around =
            std::abs(std::remainder(asked.around_mm - drawn.around_mm, std::max(piece_.around_mm, 1e-9)));
        if (asked.edge != drawn.edge) return around;
        const double along = std::min(around, std::abs(asked.distance_mm - drawn.distance_mm));
        const Run* run = asked.to_end_mm && piece_.runs ? find_run(*piece_.runs, drawn.edge) : nullptr;
        return run ? std::min(along, std::abs(*asked.to_end_mm - (run->length - drawn.distance_mm))) : along;
    }
    // Nearer to where a dart was to be closed than to here.
    bool is_unmoved(std::size_t k, double distance) const {
        return std::any_of(piece_.closed.begin(), piece_.closed.end(), [&](const AskedClosed* closed) {
            const double there = apart(stands_at(*closed), drawn_[k]);
            return there < unmoved_mm && there < distance;
        });
    }
    template <class Asked>
    std::vector<DartPair> pairs(const std::vector<Asked>& asked, double within) const {
        std::vector<DartPair> out;
        for (std::size_t i = 0; i < asked.size(); ++i)
            for (std::size_t k = 0; k < drawn_.size(); ++k) {
                const double off = apart(stands_at(*asked[i]), drawn_[k]);
                if (off <= within) out.push_back({off, i, k});
            }
        std::stable_sort(out.begin(), out.end(),
                         [](const DartPair& a, const DartPair& b) { return a.distance_mm < b.distance_mm; });
        return out;
    }
    static StandsAt stands_at(const AskedDart& asked) {
        return {asked.dart.edge, asked.dart.distance_mm, asked.dart.around_mm};
    }
    static StandsAt stands_at(const AskedClosed& closed) {
        return {closed.dart.edge, closed.dart.distance_mm, closed.around_mm, closed.dart.to_end_mm};
    }

    void match_asked(double within, Unmoved unmoved) {
        for (const DartPair& pair : pairs(piece_.asked, within)) {
            if (out_.asked[pair.asked] || is_taken_[pair.drawn]) continue;
            if (unmoved == Unmoved::left && is_unmoved(pair.drawn, pair.distance_mm)) continue;
            out_.asked[pair.asked] = pair.drawn;
            is_taken_[pair.drawn] = true;
        }
    }
    void match_closed(double within) {
        for (const DartPair& pair : pairs(piece_.closed, within)) {
            const bool is_there = piece_.closed[pair.asked]->dart.edge == drawn_[pair.drawn].edge;
            if (out_.closed[pair.asked] || is_taken_[pair.drawn] || !is_there) continue;
            out_.closed[pair.asked] = pair.drawn;
            is_taken_[pair.drawn] = true;
        }
    }

    const DartsOfPiece& piece_;
    const std::vector<StandingDart>& drawn_;
    std::vector<bool> is_taken_;
    MatchedDarts out_;
};

}  // namespace

MatchedDarts matched_darts(const DartsOfPiece& piece, const std::vector<StandingDart>& drawn) {
    return Matching(piece, drawn).matched();
}

}  // namespace dartwright
