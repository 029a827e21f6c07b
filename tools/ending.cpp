#include "ending.hpp"

#include "arguments.hpp"
#include "checked_file.hpp"
#include "dartwright/files/output_file.hpp"
#include "dartwright/files/pattern_file.hpp"
#include "dartwright/files/rule_file.hpp"
#include "dartwright/pattern/errors.hpp"
#include "dartwright/pattern/pattern_problems.hpp"
#include "unforeseen.hpp"

namespace dartwright::tools {
namespace {

ExitStatus status_of(ErrorKind kind) {
    switch (kind) {
        case ErrorKind::impossible:
        case ErrorKind::beyond_the_run:
            return ExitStatus::impossible;
        case ErrorKind::unknown_name:
        case ErrorKind::bad_words:
        case ErrorKind::output_exists:
            return ExitStatus::wrong_use;
        case ErrorKind::bad_pattern:
        case ErrorKind::unreadable:
        case ErrorKind::library_missing:
            return ExitStatus::unreadable;
    }
    return ExitStatus::internal;
}

const char* word_of(ErrorKind kind) {
    switch (kind) {
        case ErrorKind::impossible:
            return "impossible";
        case ErrorKind::beyond_the_run:
            return "beyond the run";
        case ErrorKind::unknown_name:
            return "unknown name";
        case ErrorKind::bad_words:
            return "bad words";
        case ErrorKind::output_exists:
            return "output exists";
        case ErrorKind::bad_pattern:
            return "not valid";
        case ErrorKind::unreadable:
            return "unreadable";
        case ErrorKind::library_missing:
            return "library missing";
    }
    return "internal";
}

Ending unforeseen_ending(const std::exception_ptr& thrown) {
    Unforeseen other = unforeseen(thrown);
    const char* kind = other.status == ExitStatus::internal ? "internal" : "out of memory";
    return {other.status, std::move(other.words), false, {{"kind", kind}}};
}

Json details_of(const InvalidPattern& error) {
    Json problems = Json::array();
    for (const FileProblem& each : error.problems)
        problems.push_back({{"at", each.pointer}, {"found", each.found}, {"expected", each.expected}});
    return {{"kind", word_of(error.error_kind)},
            {"file", error.file},
            {"problems", problems},
            {"more", error.more}};
}

Json details_of(const Error& error, Unit unit) {
    const Unit told_in = error.asked_in.value_or(unit);
    Json details{{"kind", word_of(error.error_kind)}};
    if (const auto* beyond = dynamic_cast<const BeyondTheRun*>(&error)) {
        details["place"] = beyond->place;
        details["edge"] = beyond->edge;
        details["length"] = beyond->length_mm;
    }
    if (const auto* impossible = dynamic_cast<const Impossible*>(&error)) {
        details["reason"] = impossible->reason_told.in(told_in);
        if (!impossible->remedy_told.empty()) details["remedy"] = impossible->remedy_told.in(told_in);
    }
    if (const auto* unknown = dynamic_cast<const UnknownName*>(&error)) {
        details["what"] = unknown->kind;
        details["name"] = unknown->name;
        details["known"] = unknown->known;
    }
    return details;
}

}  // namespace

Ending ending_of(const std::exception_ptr& thrown, Unit unit) {
    try {
        std::rethrow_exception(thrown);
    } catch (const InvalidRule& error) {
        return {ExitStatus::unreadable, error.file + ": " + all_problems(error), true, details_of(error)};
    } catch (const InvalidPattern& error) {
        return {ExitStatus::unreadable, error.file + ": " + first_problem(error), true, details_of(error)};
    } catch (const FileTrouble& error) {
        return {ExitStatus::unreadable, error.what(), true, details_of(error, unit)};
    } catch (const OutputExists& error) {
        Json details = details_of(error, unit);
        details["file"] = error.path;
        return {ExitStatus::wrong_use, error.what() + std::string(" with --overwrite"), true, details};
    } catch (const WrongUse& error) {
        return {ExitStatus::wrong_use, error.what(), true, {{"kind", "wrong use"}}};
    } catch (const UnsoundPattern&) {
        // What is read is sound: an operation of ours gave it.
        return unforeseen_ending(thrown);
    } catch (const Error& error) {
        return {status_of(error.error_kind), error.in(unit), false, details_of(error, unit)};
    } catch (...) {
        return unforeseen_ending(thrown);
    }
}

bool is_json_asked_for(const std::vector<std::string>& words) {
    std::string format;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const std::string given = "--format=";
        if (words[i].rfind(given, 0) == 0) format = words[i].substr(given.size());
        if (words[i] == "--format" && i + 1 < words.size()) format = words[i + 1];
    }
    return format == "json";
}

std::string json_line_of(const Ending& ending, const std::string& name, const Invocation& call) {
    const std::size_t space = name.find(' ');
    const std::string command = space == std::string::npos ? "" : name.substr(space + 1);
    Json line{{"dartwright_error", 1}, {"status", static_cast<int>(ending.status)}, {"command", command}};
    if (!ending.names_its_file && !call.subject.empty()) line["file"] = call.subject;
    line["message"] = ending.words;
    line.update(ending.details);
    if (!call.written.empty()) line["written"] = call.written;
    constexpr int in_one_line = -1;
    return line.dump(in_one_line, ' ', true, Json::error_handler_t::replace) + "\n";
}

}  // namespace dartwright::tools
