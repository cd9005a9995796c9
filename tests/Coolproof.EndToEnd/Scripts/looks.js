// What can be measured of how the run clock looks, in the page: targets, their distances, sizes of digits, contrast. See LooksTests.
() => {
    const layer = document.querySelector("dialog[open]") ?? document.body;
    const shown = (element) => {
        const box = element.getBoundingClientRect();
        if (box.width === 0 || getComputedStyle(element).visibility === "hidden") return false;
        const hit = document.elementFromPoint(box.x + box.width / 2, box.y + box.height / 2);
        return hit !== null && (element.contains(hit) || hit.contains(element)) && layer.contains(element);
    };
    // Of what is scrolled half out of sight only the part that shows can be touched; its whole size counts all the same.
    const seen = (element) => {
        const { left, right, top, bottom, width, height } = element.getBoundingClientRect();
        const frame = (element.closest("main, dialog") ?? document.body).getBoundingClientRect();
        return { left, right, top: Math.max(top, frame.top), bottom: Math.min(bottom, frame.bottom), width, height };
    };
    const targets = [...layer.querySelectorAll("button, a, input, select, summary")].filter(shown).map((element) => ({ name: element.innerText.replaceAll("\n", " ").trim(), box: seen(element) }));
    const small = targets.filter(({ box }) => box.width < 71.5 || box.height < 71.5).map(({ name, box }) => `${name}: ${box.width} x ${box.height}`);
    const close = [];
    for (const [index, one] of targets.entries()) {
        for (const other of targets.slice(index + 1)) {
            const dx = Math.max(one.box.left - other.box.right, other.box.left - one.box.right);
            const dy = Math.max(one.box.top - other.box.bottom, other.box.top - one.box.bottom);
            if (Math.max(dx, dy) < 15.5) close.push(`${one.name} and ${other.name}: ${Math.max(dx, dy)}`);
        }
    }
    const digits = [...document.querySelectorAll("#digits, .key, .typed")].filter((element) => element.getBoundingClientRect().width > 0).map((element) => parseFloat(getComputedStyle(element).fontSize));

    const canvas = new OffscreenCanvas(1, 1).getContext("2d", { willReadFrequently: true });
    const rgba = (colour) => {
        canvas.clearRect(0, 0, 1, 1);
        canvas.fillStyle = colour;
        canvas.fillRect(0, 0, 1, 1);
        return [...canvas.getImageData(0, 0, 1, 1).data];
    };
    // Relative luminance and contrast: WCAG 2.2, "relative luminance" and "contrast ratio".
    const luminance = ([r, g, b]) => [r, g, b].map((value) => value / 255).map((value) => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4)).reduce((sum, value, index) => sum + value * [0.2126, 0.7152, 0.0722][index], 0);
    const ground = (element) => {
        for (let at = element; at; at = at.parentElement) {
            const colour = rgba(getComputedStyle(at).backgroundColor);
            if (colour[3] === 255) return colour;
        }
        return [255, 255, 255, 255];
    };
    const contrasts = [...layer.querySelectorAll("*")].filter((element) => shown(element) && [...element.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.textContent.trim() !== "")).map((element) => {
        const [ink, paper] = [luminance(rgba(getComputedStyle(element).color)), luminance(ground(element))];
        return { text: element.textContent.trim().slice(0, 40), ratio: (Math.max(ink, paper) + 0.05) / (Math.min(ink, paper) + 0.05) };
    });
    const least = contrasts.sort((a, b) => a.ratio - b.ratio)[0];
    const body = document.querySelector("#primary button")?.getBoundingClientRect();
    return { targets: targets.length, small, close, digits: Math.min(...digits), contrast: least.ratio, palest: least.text, primaryTop: body ? body.top / innerHeight : 1, sideways: document.documentElement.scrollWidth > innerWidth };
}
