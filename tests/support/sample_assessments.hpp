#pragma once

// A class made up by hand: drafts with all marks, with some, with faults, one that could not be read, and
// names that would do harm if they were obeyed.

#include <string>
#include <vector>

#include "dartwright/assessing/assessment.hpp"

namespace dartwright::support {

/// What a writer must show and never obey.
inline const std::vector<std::string>& harmful_names() {
    static const std::vector<std::string> names{"<script>alert(1)</script>",
                                                "=1+1",
                                                "\"quoted\", 'twice' & more",
                                                "</title></svg><img src=x onerror=alert(1)>",
                                                "@SUM(A1:A9)",
                                                "\t=2+2",
                                                "two\r\nlines",
                                                "# TODO \\ not yet",
                                                "]]> -- <!-- &amp;",
                                                "\xF0\x9F\xA7\xB5 \xF0\x9F\x91\x97",
                                                "نورة",
                                                "дарья 前身頃",
                                                "bytes \xFF\xFE",
                                                ""};
    return names;
}

inline JudgedLine place_line(double found_mm, const std::string& rung, const std::string& remedy) {
    JudgedLine line;
    line.criterion = Criterion::place;
    line.piece = "front";
    line.edge = "side";
    line.dart = "side dart";
    line.what = "the side dart's place along the side";
    line.expected = 60;
    line.found = found_mm;
    line.difference = found_mm - 60;
    line.rung = rung;
    line.at = Point{210.25, 140.5};
    line.remedy = remedy;
    return line;
}

inline JudgedLine angle_line(double found_deg, const std::string& rung, const std::string& remedy) {
    JudgedLine line;
    line.criterion = Criterion::angle;
    line.piece = "front";
    line.dart = "side dart";
    line.what = "the side dart's angle";
    line.quantity = Quantity::angle;
    line.expected = 11.75;
    line.found = found_deg;
    line.difference = found_deg - 11.75;
    line.rung = rung;
    line.remedy = remedy;
    return line;
}

inline JudgedLine seam_line(const std::string& rung, const std::string& remedy) {
    JudgedLine line;
    line.criterion = Criterion::seams;
    line.seam = "side";
    line.what = "the seam side";
    line.quantity = Quantity::words;
    line.expected_words = "true";
    line.found_words = rung == "full" ? "true" : "not true";
    line.rung = rung;
    line.at = Point{0, 400};
    line.remedy = remedy;
    return line;
}

/// A criterion of one line; the shares are those of the usual ladder.
inline JudgedCriterion criterion_of(const JudgedLine& line, double of) {
    const std::string& rung = line.rung;
    const double share = rung == "full" ? 1 : rung == "accepted" ? 0.75 : rung == "noted" ? 0.5 : 0;
    return {line.criterion, share * of, of, rung, {line}};
}

inline JudgedTask task_of(const std::string& name, const std::vector<JudgedCriterion>& criteria) {
    JudgedTask task{name, "", 0, 0, criteria};
    for (const JudgedCriterion& criterion : criteria) {
        task.marks += criterion.marks;
        task.of += criterion.of;
    }
    return task;
}

struct Rungs {
    std::string place = "full";
    std::string angle = "full";
    std::string seam = "full";
};
inline Assessment assessment_of(const std::string& student, const Rungs& rungs = {}) {
    const auto off = [](const std::string& rung) {
        return rung == "full" ? 0.0 : rung == "accepted" ? 1.5 : rung == "noted" ? 3 : 6.25;
    };
    const auto remedy = [](const std::string& rung, const char* words) {
        return rung == "full" ? std::string() : std::string(words);
    };
    Assessment of;
    of.student = student;
    of.file = "class/" + student + ".json";
    of.tasks.push_back(
        task_of("move the dart",
                {criterion_of(place_line(60 + off(rungs.place), rungs.place,
                                         remedy(rungs.place, "Move the dart towards the armhole.")),
                              4),
                 criterion_of(angle_line(11.75 - off(rungs.angle), rungs.angle,
                                         remedy(rungs.angle, "Open the dart as far as the old one closed.")),
                              2)}));
    of.tasks.front().words = "Move the waist dart to the side, 60 mm from the armhole.";
    of.tasks.push_back(task_of(
        "keep the seams",
        {criterion_of(seam_line(rungs.seam, remedy(rungs.seam, "Walk the side again from the waist.")), 3)}));
    for (const JudgedTask& task : of.tasks) {
        of.marks += task.marks;
        of.of += task.of;
    }
    of.pieces.push_back({"front",
                         "front",
                         {{0, 0}, {220, 0}, {230, 200}, {180, 380}, {0, 330}},
                         {{0, 0}, {222.125, 0}, {230, 200}, {180, 380}, {0, 330}}});
    of.seams.push_back({"side", 196.5, 196.75, 0, 0.25, rungs.seam == "full"});
    return of;
}

inline Assessment unread_assessment(const std::string& student) {
    Assessment of;
    of.student = student;
    of.file = "class/" + student + ".json";
    of.unread = "/pieces/0/outline: found \"<b>\"; expected an outline";
    of.unread_kind = UnreadKind::no_pattern;
    return of;
}

/// Eight drafts, the last two with one name, and one a harmful name.
inline std::vector<Assessment> sample_class() {
    std::vector<Assessment> drafts{assessment_of("amal"),
                                   assessment_of("bo", {"accepted", "full", "full"}),
                                   assessment_of("cleo", {"noted", "accepted", "full"}),
                                   assessment_of("dana", {"fault", "full", "full"}),
                                   assessment_of("elif", {"fault", "noted", "fault"}),
                                   unread_assessment("fritz"),
                                   assessment_of("gul"),
                                   assessment_of("gul", {"full", "full", "fault"})};
    drafts.back().file = "evening/gul.json";
    drafts[2].notes = {"the draft is mirrored", "the edge flank was matched by its shape with side"};
    drafts[2].pieces.front().draft_name = "left front";
    for (const std::string& name : harmful_names()) {
        drafts.push_back(assessment_of(name, {"noted", "full", "fault"}));
        Assessment& draft = drafts.back();
        draft.notes = {name};
        draft.pieces.front().draft_name = name;
        draft.seams.front().name = name;
        draft.tasks[1].criteria[0].lines[0].found_words = name;
    }
    return drafts;
}

}  // namespace dartwright::support
