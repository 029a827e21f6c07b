#include "dartwright/darts/recording/made_operations.hpp"

#include "dartwright/darts/close_flare.hpp"
#include "dartwright/darts/close_gathers.hpp"
#include "dartwright/darts/close_seam.hpp"
#include "dartwright/darts/close_tuck.hpp"
#include "dartwright/darts/cluster.hpp"
#include "dartwright/darts/merge.hpp"
#include "dartwright/darts/open.hpp"
#include "dartwright/darts/phrases.hpp"
#include "dartwright/darts/pivot.hpp"
#include "dartwright/darts/repoint.hpp"
#include "dartwright/darts/split.hpp"
#include "dartwright/darts/true_dart.hpp"
#include "dartwright/darts/true_edge.hpp"
#include "dartwright/darts/true_seam.hpp"
#include "dartwright/pattern/place.hpp"

namespace dartwright {
namespace {

MadeOperation read_pivot(RequestWords& words) {
    PivotRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.to = words.required("to");
    request.part = {words.angle_rad("angle"), words.share("share"), words.length_mm("intake")};
    request.back_off_mm = words.length_mm("back_off");
    request.hold = words.text("hold");
    request.name = words.text("name");
    request.press = words.text("press");
    request.centre_seam = words.text("centre_seam");
    return [request](const Pattern& pattern) { return pivot(pattern, request).pattern; };
}

// `PLACE=SHARE`; a place may have an equals sign in a name, a share has none.
SplitPlace read_split_place(RequestWords& words, const std::string& number) {
    const std::string to = words.required("to" + number);
    const std::size_t sign = to.rfind('=');
    if (sign == std::string::npos) throw BadWords(quoted(to) + " has no share; expected PLACE=SHARE");
    return {to.substr(0, sign), parse_share(to.substr(sign + 1)), words.text("name" + number),
            words.text("press" + number)};
}

MadeOperation read_split(RequestWords& words) {
    SplitRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.places.push_back(read_split_place(words, ""));
    for (std::size_t i = 2; words.has("to " + std::to_string(i)); ++i)
        request.places.push_back(read_split_place(words, " " + std::to_string(i)));
    request.back_off_mm = words.length_mm("back_off");
    request.hold = words.text("hold");
    request.centre_seam = words.text("centre_seam");
    return [request](const Pattern& pattern) { return split(pattern, request).pattern; };
}

MadeOperation read_cluster(RequestWords& words) {
    ClusterRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.count = words.whole("count");
    request.apart_mm = words.length_mm("apart").value_or(0);
    request.to = words.text("to");
    const std::string lies = words.required("lies");
    if (lies != "radiating" && lies != "parallel")
        throw BadWords("a cluster is " + quoted(lies) + "; expected radiating or parallel");
    request.lies = lies == "parallel" ? ClusterLies::parallel : ClusterLies::radiating;
    // Entries from before this was asked have no such word.
    request.parallel_about = ParallelAbout::pivot;
    if (lies == "parallel" && words.has("parallel_about")) {
        const std::string about = words.text("parallel_about");
        if (about != "points")
            throw BadWords("a cluster is parallel about " + quoted(about) + "; expected points");
        request.parallel_about = ParallelAbout::points;
    }
    request.press = words.text("press");
    request.hold = words.text("hold");
    return [request](const Pattern& pattern) { return cluster(pattern, request).pattern; };
}

MadeOperation read_merge(RequestWords& words) {
    MergeRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.with = words.required("with");
    request.hold = words.text("hold");
    request.name = words.text("name");
    return [request](const Pattern& pattern) { return merge(pattern, request).pattern; };
}

TrueLegs read_legs(const std::string& word) {
    if (word == "drawn") return TrueLegs::drawn;
    if (word == "mean") return TrueLegs::mean;
    if (word == "long") return TrueLegs::long_;
    if (word == "short") return TrueLegs::short_;
    throw BadWords("the legs are " + quoted(word) + "; expected drawn, mean, long or short");
}

MadeOperation read_true(RequestWords& words) {
    if (words.has("seam")) {
        TrueSeamRequest request{words.required("seam"), words.required("end")};
        if (words.has("move")) request.move = words.text("move");
        request.span_mm = words.length_mm("span").value_or(request.span_mm);
        return [request](const Pattern& pattern) { return true_seam(pattern, request).pattern; };
    }
    if (words.has("edge")) {
        TrueEdgeRequest request{words.required("piece"), words.required("edge")};
        request.span_mm = words.length_mm("span").value_or(request.span_mm);
        return [request](const Pattern& pattern) { return true_edge(pattern, request).pattern; };
    }
    TrueDartRequest request{words.required("piece"), words.required("dart")};
    if (words.has("legs")) request.legs = read_legs(words.text("legs"));
    request.span_mm = words.length_mm("span").value_or(request.span_mm);
    return [request](const Pattern& pattern) { return true_dart(pattern, request).pattern; };
}

MadeOperation read_close_as_seam(RequestWords& words) {
    CloseSeamRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.with = words.text("with");
    request.to = words.text("to");
    request.first_name = words.text("name");
    request.second_name = words.text("second name");
    request.seam = words.text("seam");
    request.hold = words.text("hold");
    request.round_mm = words.length_mm("round");
    request.notch_mm = words.length_mm("notch").value_or(request.notch_mm);
    return [request](const Pattern& pattern) { return close_as_seam(pattern, request).pattern; };
}

MadeOperation read_close(RequestWords& words) {
    const std::string as = words.required("as");
    if (as == "flare") {
        CloseFlareRequest request;
        request.piece = words.required("piece");
        request.dart = words.required("dart");
        request.to = words.required("to");
        request.hold = words.text("hold");
        request.span_mm = words.length_mm("span").value_or(request.span_mm);
        return [request](const Pattern& pattern) { return close_as_flare(pattern, request).pattern; };
    }
    if (as == "tuck") {
        CloseTuckRequest request{words.required("piece"), words.required("dart"),
                                 words.length_mm("stitched")};
        return [request](const Pattern& pattern) { return close_as_tuck(pattern, request).pattern; };
    }
    if (as == "seam") return read_close_as_seam(words);
    if (as != "ease" && as != "gathers") {
        throw BadWords("a dart is closed as " + quoted(as) + "; expected ease, gathers, tuck, flare or seam");
    }
    CloseGathersRequest request;
    request.piece = words.required("piece");
    request.dart = words.required("dart");
    request.as = as == "ease" ? TakenIn::ease : TakenIn::gathers;
    request.span_mm = words.length_mm("span").value_or(request.span_mm);
    return [request](const Pattern& pattern) { return close_as_gathers(pattern, request).pattern; };
}

MadeOperation read_repoint(RequestWords& words) {
    RepointRequest request;
    request.piece = words.required("piece");
    request.dart = words.text("dart");
    request.back_off_mm = words.length_mm("back_off");
    request.point = words.point("point");
    request.pivot = words.point("pivot");
    request.from = words.point("from");
    request.span_mm = words.length_mm("span").value_or(request.span_mm);
    return [request](const Pattern& pattern) { return repoint(pattern, request).pattern; };
}

MadeOperation read_open(RequestWords& words) {
    OpenRequest request;
    request.piece = words.required("piece");
    const std::string worn = words.text("worn");
    const std::string side_up = words.text("side_up");
    // Entries without it are of a time when left and right were always as drawn.
    if (worn.empty() || worn == "as drawn") request.by = SidesBy::drawing;
    if (worn == "front") request.worn = Worn::front;
    if (worn == "back") request.worn = Worn::back;
    if (!request.worn && request.by == SidesBy::wearer)
        throw BadWords("a piece is worn " + quoted(worn) + "; expected front, back or as drawn");
    if (side_up == "wrong") request.side_up = SideUp::wrong;
    if (words.has("side_up") && side_up != "wrong" && side_up != "right")
        throw BadWords("the side up is " + quoted(side_up) + "; expected right or wrong");
    return [request](const Pattern& pattern) { return open(pattern, request).pattern; };
}

// Tolerances that were given for this one operation: `tolerance legs`, and so on.
std::map<std::string, double> read_tolerances(RequestWords& words) {
    std::map<std::string, double> given;
    for (const ToleranceName& tolerance : tolerance_names()) {
        const std::string key = std::string("tolerance ") + tolerance.name;
        const auto value = tolerance.is_angle ? words.angle_deg(key) : words.length_mm(key);
        if (value) given[tolerance.name] = *value;
    }
    return given;
}

Pattern done_with_tolerances(const Pattern& pattern, const MadeOperation& operation,
                             const std::map<std::string, double>& given) {
    Pattern with = pattern;
    for (const auto& [name, value] : given) with.tolerances[name] = value;
    Pattern out = operation(with);
    out.tolerances = pattern.tolerances;
    return out;
}

}  // namespace

const std::vector<OperationKind>& operation_kinds() {
    static const std::vector<OperationKind> kinds{
        {"pivot", read_pivot}, {"split", read_split},     {"merge", read_merge},     {"close", read_close},
        {"true", read_true},   {"repoint", read_repoint}, {"cluster", read_cluster}, {"open", read_open}};
    return kinds;
}

MadeOperation read_operation(const Made& made) {
    std::string known;
    for (const OperationKind& kind : operation_kinds()) {
        known += (known.empty() ? "" : ", ") + quoted(kind.name);
        if (made.operation != kind.name) continue;
        RequestWords words(made);
        const MadeOperation operation = kind.read(words);
        const std::map<std::string, double> tolerances = read_tolerances(words);
        words.refuse_unread();
        return [operation, tolerances](const Pattern& pattern) {
            return done_with_tolerances(pattern, operation, tolerances);
        };
    }
    throw BadWords("there is no operation " + quoted(made.operation) + "; there is " + known);
}

}  // namespace dartwright
