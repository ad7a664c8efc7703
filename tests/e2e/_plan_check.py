"""A second judge of plans, written from docs/planning.md alone: reads a problem and a plan in the JSON form of that page and says which rules the
plan breaks and what its levels come to. Shares nothing with the program.
"""
from collections import defaultdict

KINDS = ["breakfast", "lunch", "dinner", "snack"]
EAT_DOWN_PARAMS = {"donate_days": 30, "late_days": 7, "tolerance": 4, "monotony": 2}
REFILL_PARAMS = {"variety_cap": 2, "surplus_credit_percent": 50, "date_cap_days": 1095}


def by_id(items):
    found = {each["id"]: each for each in items}
    assert len(found) == len(items), "an id stands twice"
    return found


def rating(eater, product):
    return eater.get("ratings", {}).get(product["id"], 0)


def will_eat(product, eater):
    return not set(product.get("contains", [])) & set(eater.get("avoid", [])) and rating(eater, product) > -2


def once(faults, what, lines, *names):
    """Each key of the lines once, no negative number; returns nothing."""
    seen = set()
    for line in lines:
        key = tuple(line.get(name) for name in names)
        if key in seen:
            faults.append(f"{what} {key} stands twice")
        seen.add(key)
        for value in line.values():
            if isinstance(value, int) and value < 0:
                faults.append(f"{what} {key}: a negative number")


class EatDown:
    def __init__(self, problem, plan):
        self.problem, self.plan, self.faults = problem, plan, []
        self.params = {**EAT_DOWN_PARAMS, **problem.get("params", {})}
        self.eaters, self.products = by_id(problem["eaters"]), by_id(problem["products"])
        self.lots, self.meals = by_id(problem["lots"]), by_id(problem["meals"])
        self.today = problem["today"]
        self.end = self.today + problem["horizon_days"]
        calendar = sorted(self.meals.values(), key=lambda meal: (meal["day"], KINDS.index(meal["kind"]), meal["id"]))
        self.place = {meal["id"]: at for at, meal in enumerate(calendar)}
        self.calendar = calendar

    def need(self, holds, fault):
        if not holds:
            self.faults.append(fault)

    def in_scope(self, lot):
        return lot["last_good_day"] < self.end

    def first_day(self, lot):
        return max(self.today, lot.get("available_from") or self.today)

    def product_of(self, lot):
        return self.products[lot["product"]]

    def rows(self):
        once(self.faults, "opened", self.plan["opened"], "lot", "meal")
        once(self.faults, "servings", self.plan["servings"], "product", "meal", "eater")
        once(self.faults, "donated", self.plan["donated"], "lot")
        once(self.faults, "wasted", self.plan["wasted"], "lot")
        for line in self.plan["opened"]:
            lot, meal = self.lots[line["lot"]], self.meals[line["meal"]]
            product = self.product_of(lot)
            what = f"opening {line['lot']} at {line['meal']}"
            self.need(self.in_scope(lot) and not lot.get("already_open"), f"{what}: not to be opened")
            self.need(self.first_day(lot) <= meal["day"] <= lot["last_good_day"], f"{what}: the day")
            self.need(meal["kind"] in product["kinds"] and product["id"] not in meal.get("without", []), f"{what}: the meal")
            self.need(any(will_eat(product, self.eaters[each]) for each in meal["eaters"]), f"{what}: nobody there")
        for line in self.plan["servings"]:
            product, meal, eater = self.products[line["product"]], self.meals[line["meal"]], self.eaters[line["eater"]]
            what = f"{line['product']} for {line['eater']} at {line['meal']}"
            self.need(eater["id"] in meal["eaters"], f"{what}: not there")
            self.need(meal["kind"] in product["kinds"] and product["id"] not in meal.get("without", []), f"{what}: the meal")
            self.need(will_eat(product, eater), f"{what}: must not or will not")
        for line in self.plan["donated"]:
            lot = self.lots[line["lot"]]
            near = lot["last_good_day"] - self.today < self.params["donate_days"]
            self.need(not near and lot.get("may_donate", True), f"giving away {line['lot']}")
        self.conservation()
        self.appetites_and_weeks()
        for product in self.products.values():
            self.open_units(product)

    def conservation(self):
        gone = defaultdict(int)
        for part in ("opened", "donated", "wasted"):
            for line in self.plan[part]:
                gone[line["lot"]] += line["units"]
        for lot in self.lots.values():
            free = lot.get("already_open") or not self.in_scope(lot)
            self.need(gone[lot["id"]] == (0 if free else lot["units"]), f"lot {lot['id']}: {gone[lot['id']]} units")

    def appetites_and_weeks(self):
        at_meal, in_week, of_product = defaultdict(int), defaultdict(int), defaultdict(int)
        for line in self.plan["servings"]:
            week = (self.meals[line["meal"]]["day"] - self.problem["week_start"]) // 7
            at_meal[line["meal"], line["eater"]] += line["servings"]
            in_week[week, line["eater"]] += line["servings"]
            of_product[week, line["eater"], line["product"]] += line["servings"]
        for (meal, eater), servings in at_meal.items():
            self.need(servings <= self.meals[meal].get("appetite", {}).get(eater, 1), f"{eater} at {meal}: {servings} servings")
        for (week, eater), servings in in_week.items():
            before = self.eaters[eater].get("eaten_this_week", {}) if week == 0 else {}
            limit = self.eaters[eater].get("tolerance", self.params["tolerance"])
            self.need(servings + sum(before.values()) <= limit, f"{eater} in week {week}: {servings} servings")
        for (week, eater, product), servings in of_product.items():
            before = self.eaters[eater].get("eaten_this_week", {}).get(product, 0) if week == 0 else 0
            limit = self.eaters[eater].get("monotony", self.params["monotony"])
            self.need(servings + before <= limit, f"{eater} in week {week}: {servings} of {product}")

    def open_units(self, product):
        """Eats the servings meal by meal: from what was open before, then from what the plan opens, oldest first."""
        before = sorted((lot for lot in self.lots.values() if lot["product"] == product["id"] and lot.get("already_open") and self.in_scope(lot)),
                        key=lambda lot: (lot["last_good_day"], lot["id"]))
        left = {lot["id"]: lot["open_servings"] for lot in before}
        fresh = []  # [last day, servings left]
        keeps = product["servings"] > 1 and product.get("open_days", 0) > 0
        for meal in self.calendar:
            wanted = sum(line["servings"] for line in self.plan["servings"] if line["product"] == product["id"] and line["meal"] == meal["id"])
            opened = sum(line["units"] for line in self.plan["opened"]
                         if line["meal"] == meal["id"] and self.lots[line["lot"]]["product"] == product["id"])
            for lot in before:
                if self.first_day(lot) <= meal["day"] <= lot["last_good_day"]:
                    taken = min(wanted, left[lot["id"]])
                    left[lot["id"]] -= taken
                    wanted -= taken
            self.need(opened <= wanted, f"{product['id']} at {meal['id']}: {opened} units opened for {wanted} servings")
            fresh = [unit for unit in fresh if unit[0] >= meal["day"]] if keeps else []
            fresh += [[meal["day"] + product.get("open_days", 0), product["servings"]] for _ in range(opened)]
            for unit in fresh:
                taken = min(wanted, unit[1])
                unit[1] -= taken
                wanted -= taken
            self.need(wanted == 0, f"{product['id']} at {meal['id']}: {wanted} servings from nowhere")

    def servings_of(self, part):
        return sum(line["units"] * self.product_of(self.lots[line["lot"]])["servings"] for line in self.plan[part])

    def levels(self):
        published = self.problem.get("published") or {"until": -1, "servings": []}
        shown = {meal["id"] for meal in self.calendar if self.today <= meal["day"] <= published["until"]}
        coming = {meal["id"] for meal in self.calendar if self.today <= meal["day"]}
        served = {(line["product"], line["meal"], line["eater"]): line["servings"] for line in self.plan["servings"]}

        def missed(lines, meals):
            return sum(max(0, line["servings"] - served.get((line["product"], line["meal"], line["eater"]), 0)) for line in lines if line["meal"] in meals)

        levels = {}
        if self.problem.get("wished"):
            levels["wishes"] = missed(self.problem["wished"], coming)
        if self.problem.get("keep_published"):
            levels["dropped"] = missed(published["servings"], shown)
        open_before = sum(lot["open_servings"] for lot in self.lots.values() if lot.get("already_open") and self.in_scope(lot))
        levels["wasted"] = self.servings_of("wasted") + self.servings_of("opened") + open_before - sum(served.values())
        levels["donated"] = self.servings_of("donated")
        levels["dislike"] = sum(servings * (2 - rating(self.eaters[eater], self.products[product])) for (product, _, eater), servings in served.items())
        late = order = 0
        for line in self.plan["opened"]:
            lot, day = self.lots[line["lot"]], self.meals[line["meal"]]["day"]
            servings = line["units"] * self.product_of(lot)["servings"]
            late += servings * max(0, self.params["late_days"] - (lot["last_good_day"] - day))
            order += servings * (day - self.today) * (1 + (self.end - lot["last_good_day"]) // 7)
        levels["late"] = late
        change = defaultdict(int)
        for key, servings in served.items():
            change[key] += servings if key[1] in shown else 0
        for line in published["servings"]:
            if line["meal"] in shown:
                change[line["product"], line["meal"], line["eater"]] -= line["servings"]
        levels["changed"] = sum(abs(each) for each in change.values())
        levels["order"] = order
        return levels


class Refill:
    def __init__(self, problem, plan):
        self.problem, self.plan, self.faults = problem, plan, []
        self.params = {**REFILL_PARAMS, **problem.get("params", {})}
        self.eaters, self.products, self.containers, self.lines, self.lots, self.offers = (
            by_id(problem[part]) for part in ("eaters", "products", "containers", "lines", "lots", "offers"))

    def need(self, holds, fault):
        if not holds:
            self.faults.append(fault)

    def source(self, move):
        return self.lots[move["lot"]] if "lot" in move else self.offers[move["offer"]]

    def product(self, move):
        return self.products[self.source(move)["product"]]

    def placed(self):
        for move in self.plan["moves"]:
            yield move, self.lines[move["line"]], self.product(move), move["units"]

    def rows(self):
        once(self.faults, "packs", self.plan["packs"], "offer")
        once(self.faults, "moves", self.plan["moves"], "lot", "offer", "line")
        once(self.faults, "unmet", self.plan["unmet"], "line")
        filled, taken, mass, volume = (defaultdict(int) for _ in range(4))
        for move, line, product, units in self.placed():
            what = f"{move}"
            self.need(("lot" in move) != ("offer" in move), f"{what}: one source")
            self.need(self.source(move)["last_good_day"] >= self.problem["hold_until"], f"{what}: will not last")
            self.need(product.get("no_cook", True) and line["role"] in product["roles"], f"{what}: does not serve")
            self.need(all(will_eat(product, self.eaters[each]) for each in line["eaters"]), f"{what}: must not or will not eat it")
            filled[line["id"]] += units
            taken["lot" in move, self.source(move)["id"]] += units
            mass[line["container"]] += units * product["mass"]
            volume[line["container"]] += units * product["volume"]
        for each in self.plan["unmet"]:
            filled[each["line"]] += each["units"]
        for line in self.lines.values():
            self.need(filled[line["id"]] == line["units"], f"line {line['id']}: {filled[line['id']]} units")
        packs = {each["offer"]: each["packs"] for each in self.plan["packs"]}
        for (is_lot, source), units in taken.items():
            most = self.lots[source]["units"] if is_lot else self.offers[source]["pack_units"] * packs.get(source, 0)
            self.need(units <= most, f"{source}: {units} units")
        for offer, number in packs.items():
            self.need(number <= self.offers[offer].get("max_packs", number), f"offer {offer}: {number} packs")
        for container in self.containers.values():
            self.need(mass[container["id"]] <= container.get("mass_limit", mass[container["id"]]), f"{container['id']}: mass")
            self.need(volume[container["id"]] <= container.get("volume_limit", volume[container["id"]]), f"{container['id']}: volume")
        spent = sum(number * self.offers[offer]["price"] for offer, number in packs.items())
        self.need(spent <= self.problem.get("budget", spent), f"{spent} cents spent")

    def kit(self, line):
        return self.containers[line["container"]].get("kit", "")

    def energy(self):
        days, held = defaultdict(set), defaultdict(int)
        for line in self.lines.values():
            for eater in line["eaters"]:
                days[self.kit(line), eater].add(line["day"])
        for _, line, product, units in self.placed():
            for eater in line["eaters"]:
                held[self.kit(line), eater] += units * (product["kcal"] // len(line["eaters"]))
        return sum(max(0, self.eaters[key[1]].get("energy_target", 0) * len(on) - held[key])
                   for key, on in days.items() if self.eaters[key[1]].get("energy_target", 0) > 0)

    def levels(self):
        good = [lot for lot in self.lots.values() if lot["place"] == "kit" and lot["last_good_day"] >= self.problem["hold_until"]]
        displaced, from_outside, dislike, dates = sum(lot["units"] for lot in good), 0, 0, 0
        own, used = defaultdict(int), defaultdict(int)
        for move, line, product, units in self.placed():
            source = self.source(move)
            if "lot" in move and source["place"] == "kit":
                displaced -= units if source.get("container") == line["container"] else 0
            else:
                from_outside += units
            if "offer" in move:
                used[source["id"]] += units
            if len(line["eaters"]) == 1 and not product.get("staple"):
                own[self.kit(line), line["eaters"][0], product["id"]] += units
            dislike += sum(units * (2 - rating(self.eaters[each], product)) for each in line["eaters"])
            dates += units * max(0, self.problem["hold_until"] + self.params["date_cap_days"] - source["last_good_day"])
        unmet = 0
        for each in self.plan["unmet"]:
            line = self.lines[each["line"]]
            unmet += line["priority"] * each["units"]
            dislike += 4 * len(line["eaters"]) * each["units"]
        cost = 0
        for each in self.plan["packs"]:
            offer = self.offers[each["offer"]]
            anyone = any(will_eat(self.products[offer["product"]], eater) for eater in self.eaters.values())
            credit = offer["price"] * self.params["surplus_credit_percent"] // (100 * offer["pack_units"]) if anyone else 0
            cost += offer["price"] * each["packs"] - credit * (offer["pack_units"] * each["packs"] - used[offer["id"]])
        levels = {"unmet": unmet}
        if self.problem.get("keep_in_place"):
            levels["displaced"] = displaced
        levels["energy"] = self.energy()
        levels["repeats"] = sum(max(0, units - self.params["variety_cap"]) for units in own.values())
        return {**levels, "cost": cost, "dislike": dislike, "handled": displaced + from_outside, "dates": dates}


def judge(problem, plan):
    """(broken rules, {level: value} in order)."""
    checked = Refill(problem, plan) if problem["stage"] == "refill" else EatDown(problem, plan)
    checked.rows()
    return checked.faults, checked.levels()
