#pragma once

#include <optional>
#include <string>
#include <vector>

#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/run.hpp"

namespace dartwright {

/// A length or share as a user writes it: `60`, `6cm`, `2 3/8in`, `50%`, `-3.5mm`. Bare numbers are mm.
struct Measure {
    double value = 0;  ///< mm, or a share where is_share (50% is 0.5)
    bool is_share = false;
    Unit unit = Unit::mm;  ///< in which it was written
};
/// The longest measure at the start of the text, and how many characters it takes; empty if there is none.
struct ParsedMeasure {
    Measure measure;
    std::size_t characters = 0;
};
std::optional<ParsedMeasure> measure_at_start(const std::string& text);
/// The whole text as a length in mm (shares refused), as a share (50%, 1/3), as an angle in degrees. BadWords
/// otherwise.
double parse_length(const std::string& text);
double parse_share(const std::string& text);
double parse_angle_deg(const std::string& text);
/// `X,Y` as two lengths, in the coordinates of the piece: `391.5,170`, `39.15cm,17cm`. BadWords otherwise.
Point parse_point(const std::string& text);
/// A count: a whole number from 0 to 10,000 in digits. BadWords otherwise.
int parse_whole(const std::string& text);

/// `EDGE@DISTANCE/FROM`, read against the known edge names (longest first). Where the distance might be read
/// as a fraction or as a whole number before FROM (`3@60/2`), it is that with which FROM names an edge beside
/// the run, and the longer if both do or none does. BadWords, or UnknownName for the names.
struct Place {
    std::string edge;
    Measure distance;
    std::string from;  ///< empty only at 50%
};
Place parse_place(const std::string& text, const std::vector<Run>& runs, const std::string& piece);
std::string to_text(const Place& place);
/// The same with its distance told in the reader's unit.
Sentence told(const Place& place);

/// Sewn distance of the place from the run's anticlockwise start. BeyondTheRun if it lies beyond the
/// run's ends.
double distance_from_start(const Place& place, const Run& run);

}  // namespace dartwright
