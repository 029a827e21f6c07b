#pragma once

// A class as one self-contained HTML page: the marks of all, what went wrong most often, how each measure
// spreads, and a part for every student to be printed and handed back. Written part by part, so that a page
// for thousands needs no more memory than one for ten.
//
// UTF-8; nothing is fetched, and all of it can be read without a script: the one there is lets the table of
// marks be sorted. Markup in names is shown, not obeyed, and the page forbids the browser every script but
// its own. Light and dark; for A4, a student begins on a new page.

#include <string>
#include <vector>

#include "dartwright/assessing/class_summary.hpp"
#include "dartwright/assessing/exercise.hpp"

namespace dartwright {

struct ClassPage {
    std::string title;      ///< the exercise's name
    std::string words;      ///< to the class; may be empty
    Ladders ladders;        ///< whose rungs stand in the plots
    std::string note = {};  ///< a sentence about the exercise; may be empty
    Unit unit = Unit::mm;   ///< of the exercise: lengths are written in it
};

/// Up to where the students' parts begin. O(n log n) for n measured values of the class.
std::string class_page_begin(const ClassPage& page, const ClassSummary& summary);
/// One student's part; `number` counts from 1 in the summary's order, `label` names the student apart from
/// all others, and the page's ladders stand beside what is to be mended. O(what was judged).
std::string class_page_student(const Assessment& assessment, std::size_t number, const std::string& label,
                               const ClassPage& page);
std::string class_page_end();

}  // namespace dartwright
