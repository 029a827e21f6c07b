#include "pattern_difference.hpp"

#include <algorithm>
#include <cmath>

#include "verdicts.hpp"

namespace dartwright::tools {

namespace {

class Difference {
  public:
    void look(const Json& a, const Json& b, const std::string& place) {
        if (!out_.place.empty()) return;
        if (a.is_number() && b.is_number()) {
            out_.most = std::max(out_.most, std::abs(a.get<double>() - b.get<double>()));
        } else if (a.type() != b.type() || a.size() != b.size()) {
            differ(a, b, place);
        } else if (a.is_object()) {
            look_in_keys(a, b, place);
        } else if (a.is_array()) {
            for (std::size_t i = 0; i < a.size(); ++i) look(a[i], b[i], place + "/" + std::to_string(i));
        } else if (a != b) {
            differ(a, b, place);
        }
    }
    const PatternDifference& found() const { return out_; }

  private:
    void look_in_keys(const Json& a, const Json& b, const std::string& place) {
        for (auto each = a.begin(); each != a.end(); ++each) {
            if (!b.contains(each.key())) return differ(a, b, place);
            look(each.value(), b.at(each.key()), place + "/" + each.key());
        }
    }
    void differ(const Json& a, const Json& b, const std::string& place) {
        if (!out_.place.empty()) return;
        out_.place = place.empty() ? "/" : place;
        out_.found = shortened(json_line(a));
        out_.expected = shortened(json_line(b));
    }
    static std::string shortened(std::string words) {
        constexpr std::size_t longest = 60;
        while (!words.empty() && words.back() == '\n') words.pop_back();
        return words.size() <= longest ? words : words.substr(0, longest) + "...";
    }

    PatternDifference out_;
};

}  // namespace

PatternDifference pattern_difference(const std::string& first, const std::string& second) {
    Difference difference;
    difference.look(Json::parse(first), Json::parse(second), "");
    return difference.found();
}

}  // namespace dartwright::tools
