#pragma once

#include <functional>
#include <memory>
#include <vector>

#include "dartwright/drawing/drawing.hpp"
#include "dartwright/drawing/text_box.hpp"

namespace dartwright {

/// One or more lines of words that are placed together.
using Label = std::vector<DrawnText>;

/// What already lies on the table, and so where words may still go. Lines are held as chords. To add and to
/// ask are O(log held) where few of those held lie about the place.
class TakenPlaces {
  public:
    TakenPlaces();
    TakenPlaces(TakenPlaces&&) noexcept;
    TakenPlaces& operator=(TakenPlaces&&) noexcept;
    ~TakenPlaces();
    void add(const DrawnPath& path);
    void add(const TurnedBox& box);
    void add(const Label& label);
    void add(Point from, Point to);

    /// How many lines and boxes the box meets, with a margin around it.
    std::size_t meetings(const TurnedBox& box, double margin_mm) const;
    std::size_t meetings(const Label& label, double margin_mm) const;
    /// The same, or some number from `enough` on if it is not less.
    std::size_t meetings(const Label& label, double margin_mm, std::size_t enough) const;
    /// Whether they meet none: sooner known than how many.
    bool is_clear(const TurnedBox& box, double margin_mm) const;
    bool is_clear(const Label& label, double margin_mm) const;
    /// How many boxes the stretch meets (it may cross lines).
    std::size_t boxes_met(Point from, Point to) const;
    /// Whether it meets none: sooner known than how many.
    bool is_clear_of_boxes(Point from, Point to) const;

  private:
    struct Held;
    std::unique_ptr<Held> held_;
};

/// Candidate places for words, in the order in which they are liked; each is made when it is asked for.
struct Candidates {
    std::size_t count = 0;
    std::function<Label(std::size_t)> label;
    /// The boxes of its lines, sooner made than the words; empty where there is no such short way.
    std::function<std::vector<TurnedBox>(std::size_t)> boxes = {};
};
/// The boxes of a candidate's lines, either way.
std::vector<TurnedBox> boxes_of(const Candidates& candidates, std::size_t i);

/// The first candidate that is clear of everything taken, else the one that meets least; it is then taken.
/// Empty only where there is no candidate.
struct Placed {
    Label label;
    bool is_clear = false;
};
Placed place(TakenPlaces& taken, const std::vector<Label>& candidates, double margin_mm);

/// The angle of words along a direction so that they read upright: in (-75, 105] degrees.
double upright_angle(Vector along);

/// A line of words whose box has its centre there.
DrawnText centred(const DrawnText& style, Point centre, double angle_rad);
/// Lines below each other (the first on top), each in its own style, their block centred there.
Label centred_block(const std::vector<DrawnText>& lines, Point centre, double angle_rad);
struct BlockPlace;
/// Lines of words whose boxes are known before the words are put anywhere: those of `centred_block`, to the
/// last bit.
struct MeasuredBlock {
    explicit MeasuredBlock(std::vector<DrawnText> lines);
    std::vector<DrawnText> lines;
    std::vector<double> widths_mm;
    std::vector<TurnedBox> boxes(const BlockPlace& place) const;
    Label label(const BlockPlace& place) const;
};
/// Such a block at each of the places.
Candidates blocks_at(std::vector<DrawnText> lines, std::vector<BlockPlace> places);

struct BlockSize {
    double width = 0;
    double height = 0;
};
BlockSize size_of_block(const std::vector<DrawnText>& lines);

/// Where a block of lines is centred, and how it is turned.
struct BlockPlace {
    Point centre;
    double angle_rad = 0;
};
/// The centre of the first line's box, of a block of that size.
Point centre_of_first(const std::vector<DrawnText>& lines, const BlockSize& size, const BlockPlace& place);

}  // namespace dartwright
